// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/modules/one_file.h"

#include <filesystem>
#include <system_error>

#include "core/system/atomic_file.h"

namespace soakwright::modules {

namespace fs = std::filesystem;

bool one_file(const std::string& a, const std::string& b) {
  std::error_code error;
  const bool device = fs::exists(a, error) && !fs::is_regular_file(a, error);
  if (device) return false;
  if (fs::equivalent(a, b, error)) return true;
  const std::string place = written_place(a);
  return !place.empty() && place == written_place(b);
}

}  // namespace soakwright::modules
