// SPDX-License-Identifier: GPL-3.0-or-later
// 150 logs mangled at random: an answer every time, never a crash, never half a result. tests/run draws a
// seed and prints it; SOAKWRIGHT_SEED brings one back.
#include <cstdlib>
#include <random>
#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/cli/run_program.h"

namespace {

using Random = std::mt19937_64;

std::size_t below(Random& random, std::size_t end) { return end == 0 ? 0 : random() % end; }

/// One of the things that happen to files.
void mangle(std::string& text, Random& random) {
  const std::size_t at = below(random, text.size());
  const std::size_t length = below(random, 200);
  switch (random() % 9) {
    case 0:  // cut short
      text.resize(at);
      break;
    case 1:  // a hole
      text.erase(at, length);
      break;
    case 2:  // any bytes
      for (std::size_t i = at; i < text.size() && i < at + 1 + length / 20; ++i)
        text[i] = static_cast<char>(random());
      break;
    case 3:  // a block of zeros
      text.replace(at, std::min(length, text.size() - at), length, '\0');
      break;
    case 4:  // a piece twice
      text.insert(at, text.substr(at, length * 5));
      break;
    case 5:  // a piece of one place in another
      text.insert(at, text.substr(below(random, text.size()), length));
      break;
    case 6:  // quotes and delimiters
      text.insert(at, 1, "\",;\t|\n\r."[random() % 8]);
      break;
    case 7:  // digits run wild
      text.insert(at, std::string(1 + length / 10, "0123456789eE+-.,"[random() % 16]));
      break;
    default:  // lines end otherwise
      if (const std::size_t end = text.find('\n', at); end != std::string::npos) text[end] = '\r';
      break;
  }
}

std::uint64_t seed() {
  const char* given = std::getenv("SOAKWRIGHT_SEED");
  return given != nullptr ? std::strtoull(given, nullptr, 10) : 20310402;
}

}  // namespace

TEST_CASE("150 mangled logs each get an answer and never half a result") {
  const std::uint64_t drawn = seed();
  WARN("SOAKWRIGHT_SEED=" << drawn);
  Random random(drawn);
  const std::string originals[] = {text_of(source_file("sample-logs/w-117-stress-relief/d3-n2.csv")),
                                   text_of(source_file("sample-logs/w-124-half-broken/yard-4.csv")),
                                   text_of(source_file("sample-logs/w-121-preheat/seam-preheat.csv"))};
  const std::string procedure = source_file("sample-logs/w-117-stress-relief/htp-021.toml");
  int refused = 0;
  int evaluated = 0;
  for (int i = 0; i < 150; ++i) {
    const TemporaryFolder folder;
    std::string text = originals[random() % 3];
    for (std::size_t wounds = 1 + below(random, 5); wounds > 0; --wounds) mangle(text, random);
    const std::string log = folder.with("log.csv", text);
    const Ran ran =
        run_soakwright({"check", log, "--procedure", procedure, "--json", folder.file("result.json")});
    INFO("log " << i << " of seed " << drawn << ": exit code " << ran.exit_code << "\n" << ran.err);
    if (ran.exit_code == 65) {
      ++refused;
      CHECK(ran.err.starts_with("soakwright: " + log + ":"));
      CHECK(ran.err.find("; ") != std::string::npos);
      CHECK(ran.out.empty());
      CHECK(folder.names() == std::vector<std::string>{"log.csv"});
    } else {
      ++evaluated;
      CHECK((ran.exit_code == 0 || ran.exit_code == 1 || ran.exit_code == 2));
      CHECK(ran.err.empty());
      const auto result = nlohmann::json::parse(text_of(folder.file("result.json")), nullptr, false);
      REQUIRE(result.is_object());
      CHECK(result["verdict"].is_string());
      CHECK(folder.names() == std::vector<std::string>{"log.csv", "result.json"});
    }
  }
  // Both ways out were taken, so that both were tested.
  CHECK(refused > 0);
  CHECK(evaluated > 0);
}
