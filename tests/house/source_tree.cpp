#include "tests/house/source_tree.h"

#include <algorithm>
#include <fstream>
#include <regex>

std::vector<std::string> lines_of(const std::filesystem::path& file) {
  std::vector<std::string> lines;
  std::ifstream in(file, std::ios::binary);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

std::vector<IncludeLine> includes_in(const std::vector<std::string>& lines) {
  static const std::regex pattern(R"(^\s*#\s*include\s*([<"])([^>"]+)[>"])");
  std::vector<IncludeLine> found;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    std::smatch match;
    if (std::regex_search(lines[i], match, pattern)) found.push_back({i + 1, match[2], match[1] == "\""});
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
