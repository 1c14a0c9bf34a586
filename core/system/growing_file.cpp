// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/system/growing_file.h"

#include <cerrno>
#include <utility>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "core/system/atomic_file.h"
#include "core/system/write_problems.h"

namespace soakwright {
namespace {

constexpr mode_t kAsTheUmaskSays = 0666;

}  // namespace

GrowingFile::GrowingFile(std::string path, std::string target, std::string part, Descriptor file)
    : path_(std::move(path)), target_(std::move(target)), part_(std::move(part)), file_(std::move(file)) {}

GrowingFile::GrowingFile(GrowingFile&& other) noexcept
    : path_(std::move(other.path_)),
      target_(std::move(other.target_)),
      part_(std::exchange(other.part_, {})),
      file_(std::move(other.file_)) {}

GrowingFile::~GrowingFile() {
  if (!part_.empty()) ::unlink(part_.c_str());
}

Result<GrowingFile> GrowingFile::open(const std::string& path) {
  if (is_device_or_pipe(path)) {
    Descriptor direct(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
    if (!direct.open()) return cannot_write(path, errno);
    return GrowingFile{path, path, {}, std::move(direct)};
  }
  const std::string target = written_place(path);
  if (target.empty()) return links_lead_nowhere(path);
  struct stat status {};
  if (::stat(target.c_str(), &status) == 0) {
    if (S_ISDIR(status.st_mode)) return is_a_folder(path);
    if (::access(target.c_str(), W_OK) != 0) return cannot_write(path, errno);
  }
  const std::string part = target + ".part";
  Descriptor file(
      ::open(part.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC | O_NOFOLLOW, kAsTheUmaskSays));
  if (!file.open()) return cannot_write(path, errno);
  return GrowingFile{path, target, part, std::move(file)};
}

std::optional<Problem> GrowingFile::append(std::string_view bytes) {
  if (const int error = write_all(file_.number(), bytes); error != 0) return cannot_write(path_, error);
  return std::nullopt;
}

std::optional<Problem> GrowingFile::finish() {
  int error = 0;
  struct stat before {};
  const bool replaces = !part_.empty() && ::stat(target_.c_str(), &before) == 0;
  if (replaces && ::fchmod(file_.number(), before.st_mode & 07777U) != 0) error = errno;
  if (error == 0 && !part_.empty()) error = sync_to_disk(file_.number());
  if (!file_.close() && error == 0) error = errno;
  if (error == 0 && !part_.empty() && ::rename(part_.c_str(), target_.c_str()) != 0) error = errno;
  if (error != 0) return cannot_write(path_, error);
  part_.clear();
  return std::nullopt;
}

std::string part_file_of(const std::string& path) {
  const std::string target = written_place(path);
  return target.empty() ? target : target + ".part";
}

bool is_device_or_pipe(const std::string& path) {
  struct stat status {};
  if (::stat(path.c_str(), &status) != 0) return false;
  // /dev/stdout is whatever it is connected to, also where that is a file.
  const bool open_file =
      path.starts_with("/proc/") || path.starts_with("/dev/fd/") || path.starts_with("/dev/std");
  return !S_ISDIR(status.st_mode) && (open_file || !S_ISREG(status.st_mode));
}

}  // namespace soakwright
