// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/modules/program_folder.h"

#ifdef _WIN32
#include <array>
#include <string>

#include <windows.h>
#else
#include <system_error>
#endif

namespace soakwright::modules {

namespace fs = std::filesystem;

#ifdef _WIN32
fs::path program_folder() {
  std::array<wchar_t, 32768> path{};
  const DWORD length = GetModuleFileNameW(nullptr, path.data(), static_cast<DWORD>(path.size()));
  return fs::path(std::wstring(path.data(), length)).parent_path();
}
#else
fs::path program_folder() {
  std::error_code error;
  const fs::path program = fs::read_symlink("/proc/self/exe", error);
  return error ? fs::path{} : program.parent_path();
}
#endif

}  // namespace soakwright::modules
