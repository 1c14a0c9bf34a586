// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/draft/rule_folders.h"

#include <cstdlib>
#include <filesystem>
#include <system_error>

#include "app/modules/program_folder.h"

namespace soakwright::cli {
namespace {

namespace fs = std::filesystem;

bool is_folder(const fs::path& path) {
  std::error_code error;
  return fs::is_directory(path, error);
}

/// XDG Base Directory Specification: a value that is empty or relative does not count.
fs::path user_data_folder() {
  const char* const data = std::getenv("XDG_DATA_HOME");
  if (data != nullptr && fs::path(data).is_absolute()) return data;
  const char* const home = std::getenv("HOME");
  return home != nullptr && *home != '\0' ? fs::path(home) / ".local" / "share" : fs::path{};
}

}  // namespace

std::vector<std::string> rule_folders(const std::string& named) {
  std::vector<std::string> folders;
  const fs::path program = modules::program_folder();
  if (!program.empty())
    for (const fs::path& place : {program / "rules", program / SOAKWRIGHT_RULES_FROM_PROGRAM}) {
      if (!is_folder(place)) continue;
      folders.push_back(place.lexically_normal().string());
      break;
    }
  if (const fs::path data = user_data_folder(); !data.empty())
    if (const fs::path place = data / "soakwright" / "rules"; is_folder(place))
      folders.push_back(place.string());
  if (!named.empty()) folders.push_back(named);
  return folders;
}

}  // namespace soakwright::cli
