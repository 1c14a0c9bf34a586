// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/source_file.h"

#include <algorithm>
#include <cerrno>
#include <utility>

#include <fcntl.h>
#include <sys/stat.h>
#include <sys/types.h>

#if defined(_WIN32)
#include <io.h>
#else
#include <unistd.h>
#endif

#include "core/read/log_file_problems.h"

namespace soakwright {
namespace {

#if defined(_WIN32)
constexpr int kOpenFlags = _O_RDONLY | _O_BINARY;
int open_descriptor(const char* path) { return _open(path, kOpenFlags); }
void close_descriptor(int descriptor) { _close(descriptor); }
std::ptrdiff_t read_some(int descriptor, std::uint64_t offset, char* into, std::size_t count) {
  if (_lseeki64(descriptor, static_cast<std::int64_t>(offset), SEEK_SET) < 0) return -1;
  return _read(descriptor, into, static_cast<unsigned>(std::min<std::size_t>(count, 1U << 30)));
}
#else
// Without O_NONBLOCK a pipe that nobody writes to would hold the program here for ever.
constexpr int kOpenFlags = O_RDONLY | O_CLOEXEC | O_NONBLOCK;
int open_descriptor(const char* path) { return ::open(path, kOpenFlags); }
void close_descriptor(int descriptor) { ::close(descriptor); }
std::ptrdiff_t read_some(int descriptor, std::uint64_t offset, char* into, std::size_t count) {
  for (;;) {
    const ssize_t got = ::pread(descriptor, into, count, static_cast<off_t>(offset));
    if (got >= 0 || errno != EINTR) return got;
  }
}
#endif

}  // namespace

Result<SourceFile> SourceFile::open(const std::string& path) {
  const int descriptor = open_descriptor(path.c_str());
  if (descriptor < 0) return log_file_problems::not_opened(path, errno);
  SourceFile file{descriptor, 0};
  struct stat status {};
  if (fstat(descriptor, &status) != 0) return log_file_problems::not_readable(path, errno);
  if (S_ISDIR(status.st_mode)) return log_file_problems::is_folder(path);
  if (!S_ISREG(status.st_mode)) return log_file_problems::pipe_or_device(path);
  file.bytes_ = static_cast<std::uint64_t>(status.st_size);
  return file;
}

SourceFile::~SourceFile() {
  if (descriptor_ >= 0) close_descriptor(descriptor_);
}

SourceFile::SourceFile(SourceFile&& other) noexcept
    : descriptor_(std::exchange(other.descriptor_, -1)), bytes_(other.bytes_) {}

SourceFile& SourceFile::operator=(SourceFile&& other) noexcept {
  std::swap(descriptor_, other.descriptor_);
  std::swap(bytes_, other.bytes_);
  return *this;
}

std::ptrdiff_t SourceFile::read_at(std::uint64_t offset, char* into, std::size_t count) const {
  if (offset >= bytes_) return 0;
  count = static_cast<std::size_t>(std::min<std::uint64_t>(count, bytes_ - offset));
  std::size_t done = 0;
  while (done < count) {
    const std::ptrdiff_t got = read_some(descriptor_, offset + done, into + done, count - done);
    if (got < 0) return -1;
    if (got == 0) break;
    done += static_cast<std::size_t>(got);
  }
  return static_cast<std::ptrdiff_t>(done);
}

}  // namespace soakwright
