// SPDX-License-Identifier: GPL-3.0-or-later
// The rules of modules.txt, and what they say of one #include.
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "tests/house/source_tree.h"

class ModuleRules {
 public:
  /// `modules` are the lines of modules.txt, `values` those of core/public_headers.txt.
  ModuleRules(const std::vector<std::string>& modules, const std::vector<std::string>& values);

  /// Why `file` (from the top of the tree) may not have this line; none if it may.
  [[nodiscard]] std::optional<std::string> objection(const std::string& file,
                                                     const IncludeLine& include) const;
  /// The module that a file stands in: "core/record", "core" for the entry points, "" outside every module.
  [[nodiscard]] std::string module_of(std::string_view file) const;

 private:
  [[nodiscard]] bool is_value(const std::string& header) const;

  std::map<std::string, std::set<std::string>> allowed_;
  std::vector<std::string> values_;
};
