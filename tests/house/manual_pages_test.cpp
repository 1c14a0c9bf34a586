// SPDX-License-Identifier: GPL-3.0-or-later
// The manual's pages fit together and fit the program: links lead somewhere, every page is in the list of
// pages, every kind of requirement has its section.
#include <algorithm>
#include <filesystem>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/app/cli/run_program.h"

namespace fs = std::filesystem;

namespace {

std::vector<fs::path> pages() {
  std::vector<fs::path> all{source_file("README.md"), source_file("DEVELOPERS.md")};
  for (const auto& entry : fs::directory_iterator(source_file("resources/manual")))
    if (entry.path().extension() == ".md") all.push_back(entry.path());
  return all;
}

/// What a link to a heading ends in: small letters, digits, letters beyond ASCII; spaces as dashes.
std::string anchor_of(const std::string& heading) {
  std::string anchor;
  for (const char c : heading) {
    const auto byte = static_cast<unsigned char>(c);
    if (c >= 'A' && c <= 'Z')
      anchor += static_cast<char>(c - 'A' + 'a');
    else if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '_' || byte >= 0x80)
      anchor += c;
    else if (c == ' ')
      anchor += '-';
  }
  return anchor;
}

std::set<std::string> anchors_in(const fs::path& page) {
  std::set<std::string> anchors;
  std::istringstream in(text_of(page));
  bool code = false;
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with("```")) code = !code;
    if (const std::size_t text = line.find_first_not_of('#'); !code && text != 0 && text != std::string::npos)
      anchors.insert(anchor_of(line.substr(text + 1)));
  }
  return anchors;
}

struct Link {
  std::string target;
  std::string anchor;
};

std::vector<Link> links_in(const fs::path& page) {
  static const std::regex link(R"(\]\(([^)#\s]*)#?([^)\s]*)\))");
  const std::string text = text_of(page);
  std::vector<Link> links;
  for (std::sregex_iterator match(text.begin(), text.end(), link), end; match != end; ++match)
    links.push_back({(*match)[1], (*match)[2]});
  return links;
}

}  // namespace

TEST_CASE("a heading's anchor is as readers of Markdown make it") {
  CHECK(anchor_of("Lines of verify") == "lines-of-verify");
  CHECK(anchor_of("`record.temperature-max`") == "recordtemperature-max");
  CHECK(anchor_of("`stage-N.heating-rate`") == "stage-nheating-rate");
}

TEST_CASE("every link of README and manual leads to a file and a heading that are there") {
  std::size_t checked = 0;
  for (const fs::path& page : pages())
    for (const Link& link : links_in(page)) {
      if (link.target.starts_with("http")) continue;
      const fs::path target = link.target.empty() ? page : page.parent_path() / link.target;
      INFO(page.filename().string() << ": " << link.target << " # " << link.anchor);
      CHECK(fs::exists(target));
      if (!link.anchor.empty() && target.extension() == ".md")
        CHECK(anchors_in(target).contains(link.anchor));
      ++checked;
    }
  CHECK(checked > 80);
}

TEST_CASE("every page of the manual is in its list of pages") {
  const std::string list = text_of(source_file("resources/manual/README.md"));
  for (const fs::path& page : pages()) {
    const std::string name = page.filename().string();
    if (name == "README.md" || name == "DEVELOPERS.md") continue;
    INFO(name);
    CHECK(list.find("| [" + name + "](" + name + ") |") != std::string::npos);
  }
}

TEST_CASE("every kind of requirement has a section with its three verdicts, and no other has one") {
  const std::string table = text_of(source_file("core/evaluate/requirement_kinds.h"));
  static const std::regex id("return \\{\"([a-z-]+)\", Kind::");
  std::multiset<std::string> ids;
  for (std::sregex_iterator match(table.begin(), table.end(), id), end; match != end; ++match)
    ids.insert((*match)[1]);
  CHECK(ids.size() >= 20);

  const std::string page = text_of(source_file("resources/manual/requirements.md"));
  static const std::regex heading("\n### `(?:record|stage-N)\\.([a-z-]+)`\n");
  std::multiset<std::string> sections;
  for (std::sregex_iterator match(page.begin(), page.end(), heading), end; match != end; ++match) {
    sections.insert((*match)[1]);
    const auto begin = static_cast<std::size_t>(match->position()) + 1;
    const std::string section = page.substr(begin, page.find("\n### ", begin) - begin);
    INFO(section);
    for (const char* part : {"**Measured:**", "**Source:**", "\n```text\n", "\n| met | ", "\n| not met | ",
                             "\n| inconclusive | "})
      CHECK(section.find(part) != std::string::npos);
  }
  CHECK(sections == ids);
}
