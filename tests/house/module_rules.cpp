// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/house/module_rules.h"

#include <algorithm>
#include <sstream>

#include <fnmatch.h>

namespace {

bool starts_with_any(std::string_view text, std::initializer_list<std::string_view> starts) {
  return std::any_of(starts.begin(), starts.end(), [&](auto start) { return text.starts_with(start); });
}

/// Qt's headers, and the plot library that brings them.
bool is_qt(const IncludeLine& include) {
  if (include.quoted) return false;
  const std::string& target = include.target;
  return (target.size() > 1 && target[0] == 'Q' && target.find('.') == std::string::npos) ||
         starts_with_any(target, {"Qt", "qcustomplot", "qt"});
}

}  // namespace

ModuleRules::ModuleRules(const std::vector<std::string>& modules, const std::vector<std::string>& values) {
  for (const std::string& line : modules) {
    const auto colon = line.find(':');
    if (line.starts_with('#') || colon == std::string::npos) continue;
    std::set<std::string>& allowed = allowed_[line.substr(0, colon)];
    std::istringstream words(line.substr(colon + 1));
    for (std::string word; words >> word;) {
      if (word.starts_with('+')) {
        word.erase(0, 1);
        const auto& inherited = allowed_.at(word);
        allowed.insert(inherited.begin(), inherited.end());
      }
      allowed.insert(word);
    }
  }
  std::copy_if(values.begin(), values.end(), std::back_inserter(values_),
               [](const auto& line) { return !line.empty(); });
}

std::string ModuleRules::module_of(std::string_view file) const {
  const auto last = file.rfind('/');
  std::string folder(file.substr(0, last == std::string_view::npos ? 0 : last));
  // The entry points stand in core itself; a folder of core is a module of its own or none.
  if (folder == "core") return folder;
  while (!folder.empty() && folder != "core") {
    if (allowed_.contains(folder)) return folder;
    const auto slash = folder.rfind('/');
    folder.erase(slash == std::string::npos ? 0 : slash);
  }
  return "";
}

bool ModuleRules::is_value(const std::string& header) const {
  return std::any_of(values_.begin(), values_.end(), [&](const std::string& pattern) {
    return fnmatch(pattern.c_str(), header.c_str(), FNM_PATHNAME) == 0;
  });
}

std::optional<std::string> ModuleRules::objection(const std::string& file, const IncludeLine& include) const {
  const std::string module = module_of(file);
  if (module.empty()) {
    if (starts_with_any(file, {"core/", "app/"})) return file + " stands in no module of modules.txt";
    return std::nullopt;
  }
  const std::set<std::string>& allowed = allowed_.at(module);
  if (is_qt(include))
    return allowed.contains("qt") ? std::nullopt : std::optional(module + " knows no Qt: " + include.target);
  if (!include.quoted) {
    if (starts_with_any(include.target, {"core/", "app/"})) return "own headers in quotes: " + include.target;
    return std::nullopt;
  }
  // AUTOMOC's own files.
  if (include.target.ends_with(".moc") || include.target.starts_with("moc_")) return std::nullopt;
  if (!starts_with_any(include.target, {"core/", "app/"}))
    return "own headers by their path from the top: " + include.target;
  const std::string target_module = module_of(include.target);
  if (target_module == module || allowed.contains(target_module)) return std::nullopt;
  if (allowed.contains("values") && is_value(include.target)) return std::nullopt;
  return module + " may not include " + include.target;
}
