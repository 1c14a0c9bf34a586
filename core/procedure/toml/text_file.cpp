// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/toml/text_file.h"

#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <system_error>

#if !defined(_WIN32)
#include <fcntl.h>
#include <unistd.h>
#endif

namespace soakwright {
namespace {

Problem cannot_open(const std::string& path, std::string what, std::string help) {
  return {ProblemKind::cannot_open, path, 0, std::move(what), std::move(help)};
}

Problem why_not(const std::string& path, int error) {
  if (path.empty()) return cannot_open(path, "the name of a file is empty", "give its path");
  if (error == ENOENT || error == ENOTDIR)
    return cannot_open(path, "there is no such file", "check the path and the spelling");
  if (error == EACCES || error == EPERM)
    return cannot_open(path, "the file may not be read", "check its permissions");
  return cannot_open(path, "the file cannot be read", "check the path and the disk");
}

struct Closer {
  void operator()(std::FILE* file) const { std::fclose(file); }
};

/// Does not wait for somebody to write: a pipe, or a device that poses as a file, would hold the program for
/// ever.
std::FILE* open_to_read(const std::string& path) {
#if defined(_WIN32)
  return std::fopen(path.c_str(), "rb");
#else
  const int descriptor = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
  if (descriptor < 0) return nullptr;
  std::FILE* const file = ::fdopen(descriptor, "rb");
  if (file == nullptr) ::close(descriptor);
  return file;
#endif
}

}  // namespace

Result<std::string> read_text_file(const std::string& path) {
  constexpr std::size_t kFarTooLarge = std::size_t{16} << 20U;
  // Opening a folder succeeds on some systems and only reading it fails; a pipe that nobody writes to would
  // hold the program here for ever.
  std::error_code ignored;
  const std::filesystem::file_status status = std::filesystem::status(path, ignored);
  if (std::filesystem::is_directory(status))
    return cannot_open(path, "this is a folder", "name the file in it");
  if (std::filesystem::exists(status) && !std::filesystem::is_regular_file(status))
    return cannot_open(path, "this is a pipe or a device, not a file",
                       "save the text to a file and name that");
  errno = 0;
  const std::unique_ptr<std::FILE, Closer> file{open_to_read(path)};
  if (!file) return why_not(path, errno);
  std::string bytes;
  char buffer[16384];
  while (const std::size_t got = std::fread(buffer, 1, sizeof buffer, file.get())) {
    bytes.append(buffer, got);
    if (bytes.size() > kFarTooLarge)
      return Problem{ProblemKind::bad_input, path, 0, "the file is larger than 16 MB",
                     "a procedure, job or review is a few kilobytes of TOML; is this the log?"};
  }
  if (std::ferror(file.get()) != 0) return why_not(path, errno);
  return bytes;
}

}  // namespace soakwright
