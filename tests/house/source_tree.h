// SPDX-License-Identifier: GPL-3.0-or-later
// The project's C++ files and their #include lines, for the tests of the house's own rules.
#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <vector>

struct IncludeLine {
  std::size_t line = 0;
  std::string target;   ///< what stands between the quotes or brackets
  bool quoted = false;  ///< "…" and not <…>
};

/// The lines of a text file; empty where it cannot be read.
std::vector<std::string> lines_of(const std::filesystem::path& file);

/// Every #include of a C++ text.
std::vector<IncludeLine> includes_in(const std::vector<std::string>& lines);

/// Paths of the .h and .cpp files below core, app and tests, from the top of the tree, with forward slashes,
/// sorted.
std::vector<std::string> cpp_files(const std::filesystem::path& top);
