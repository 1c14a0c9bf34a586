// SPDX-License-Identifier: GPL-3.0-or-later
// A part of the program that is a file of its own, opened when it is needed: beside the program, or in the
// folder for modules. What both sides agree on is in a border header of core/report.
#pragma once

#include <filesystem>
#include <string>
#include <variant>

#include "core/problems/problem.h"

namespace soakwright::modules {

/// Which module is meant, and how it is talked of.
struct ModuleName {
  const char* stem;      ///< of the file: soakwright-pdf
  const char* wanted;    ///< what is not to be had without it: "--report and --chart are"
  const char* part;      ///< "report writer"
  const char* help;      ///< what to do without it
  const char* layout;    ///< the function that says which build it is
  std::string expected;  ///< what that must say
};

class ModuleFile {
 public:
  /// Looked for in `folder`, the program's own where it is empty, and in the folder for modules seen from
  /// there. Where there is no such module, or one of another build, the problem says so (69).
  static std::variant<ModuleFile, Problem> open(const ModuleName& name,
                                                const std::filesystem::path& folder = {});

  /// The function of that name; null where the module has none.
  [[nodiscard]] void* entry(const char* name) const;
  /// That the module lacks a function.
  [[nodiscard]] static Problem not_whole(const ModuleName& name);

 private:
  explicit ModuleFile(void* handle) : handle_(handle) {}
  void* handle_;
};

}  // namespace soakwright::modules
