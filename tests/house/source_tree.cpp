// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/house/source_tree.h"

#include <algorithm>
#include <fstream>
#include <string_view>

std::vector<std::string> lines_of(const std::filesystem::path& file) {
  std::vector<std::string> lines;
  std::ifstream in(file, std::ios::binary);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

std::vector<IncludeLine> includes_in(const std::vector<std::string>& lines) {
  std::vector<IncludeLine> found;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    std::string_view rest = lines[i];
    const auto skip_spaces = [&] {
      rest.remove_prefix(std::min(rest.find_first_not_of(" \t"), rest.size()));
    };
    skip_spaces();
    if (!rest.starts_with('#')) continue;
    rest.remove_prefix(1);
    skip_spaces();
    if (!rest.starts_with("include")) continue;
    rest.remove_prefix(7);
    skip_spaces();
    if (!rest.starts_with('"') && !rest.starts_with('<')) continue;
    const bool quoted = rest.front() == '"';
    const auto end = rest.find(quoted ? '"' : '>', 1);
    if (end != std::string_view::npos) found.push_back({i + 1, std::string(rest.substr(1, end - 1)), quoted});
  }
  return found;
}

std::vector<std::string> cpp_files(const std::filesystem::path& top) {
  std::vector<std::string> files;
  for (const char* folder : {"core", "app", "tests"}) {
    for (const auto& entry : std::filesystem::recursive_directory_iterator(top / folder)) {
      const auto extension = entry.path().extension();
      if (entry.is_regular_file() && (extension == ".h" || extension == ".cpp"))
        files.push_back(entry.path().lexically_relative(top).generic_string());
    }
  }
  std::sort(files.begin(), files.end());
  return files;
}
