// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/system/write_problems.h"

#include <cerrno>
#include <cstring>

namespace soakwright {

Problem cannot_write(const std::string& path, const std::string& why) {
  return {ProblemKind::cannot_write, path, 0, "cannot be written: " + why,
          "name a file in a folder that exists and may be written to"};
}

Problem cannot_write(const std::string& path, int error) {
  const bool full = error == ENOSPC || error == EDQUOT || error == EFBIG;
  return {ProblemKind::cannot_write, path, 0, std::string{"cannot be written: "} + std::strerror(error),
          full ? "free some space, or name a file on another disk"
               : "name a file in a folder that exists and may be written to"};
}

Problem links_lead_nowhere(const std::string& path) {
  return cannot_write(path, "its symbolic links lead nowhere");
}

Problem is_a_folder(const std::string& path) { return cannot_write(path, "it is a folder"); }

Problem written_by_another_run(const std::string& path) {
  return {ProblemKind::cannot_write, path, 0, "another run of the program is writing here",
          "wait for it, or give each run files of its own"};
}

}  // namespace soakwright
