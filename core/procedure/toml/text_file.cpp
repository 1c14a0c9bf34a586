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

#include "core/procedure/toml/text_file_problems.h"

namespace soakwright {
namespace {

Problem why_not(const std::string& path, int error) {
  if (path.empty()) return text_file_problems::empty_path();
  if (error == ENOENT || error == ENOTDIR) return text_file_problems::no_such_file(path);
  if (error == EACCES || error == EPERM) return text_file_problems::not_permitted(path);
  return text_file_problems::not_readable(path);
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
  if (std::filesystem::is_directory(status)) return text_file_problems::is_folder(path);
  if (std::filesystem::exists(status) && !std::filesystem::is_regular_file(status))
    return text_file_problems::pipe_or_device(path);
  errno = 0;
  const std::unique_ptr<std::FILE, Closer> file{open_to_read(path)};
  if (!file) return why_not(path, errno);
  std::string bytes;
  char buffer[16384];
  while (const std::size_t got = std::fread(buffer, 1, sizeof buffer, file.get())) {
    bytes.append(buffer, got);
    if (bytes.size() > kFarTooLarge) return text_file_problems::far_too_large(path);
  }
  if (std::ferror(file.get()) != 0) return why_not(path, errno);
  return bytes;
}

}  // namespace soakwright
