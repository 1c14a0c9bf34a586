// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/batch/file_stamp.h"

#include <sys/stat.h>

namespace soakwright {

std::optional<FileIdentity> identity_of(const std::string& path) {
  struct stat status {};
  if (::stat(path.c_str(), &status) != 0) return std::nullopt;
  return FileIdentity{static_cast<std::uint64_t>(status.st_dev), static_cast<std::uint64_t>(status.st_ino)};
}

std::uint64_t size_of(const std::string& path) {
  struct stat status {};
  if (::stat(path.c_str(), &status) != 0 || status.st_size < 0) return 0;
  return static_cast<std::uint64_t>(status.st_size);
}

std::string stamp_of(const std::vector<std::string>& paths) {
  std::string stamp;
  const auto add = [&](auto number) { (stamp += std::to_string(number)) += ' '; };
  for (const std::string& path : paths) {
    struct stat status {};
    if (::stat(path.c_str(), &status) == 0) {
      add(status.st_ino);
      add(status.st_size);
      add(status.st_mtim.tv_sec);
      add(status.st_mtim.tv_nsec);
      add(status.st_ctim.tv_sec);
      add(status.st_ctim.tv_nsec);
    }
    stamp += '/';
  }
  return stamp;
}

}  // namespace soakwright
