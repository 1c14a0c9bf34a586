// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/system/file_descriptor.h"

#include <cerrno>
#include <utility>

#include <unistd.h>

namespace soakwright {

Descriptor::~Descriptor() {
  if (number_ >= 0) ::close(number_);
}

Descriptor::Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}

Descriptor& Descriptor::operator=(Descriptor&& other) noexcept {
  std::swap(number_, other.number_);
  return *this;
}

bool Descriptor::close() {
  const int number = std::exchange(number_, -1);
  return ::close(number) == 0;
}

int write_all(int descriptor, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(descriptor, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return written == 0 ? EIO : errno;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return 0;
}

int read_all_at(int descriptor, std::uint64_t offset, char* into, std::size_t count) {
  while (count > 0) {
    const ssize_t got = ::pread(descriptor, into, count, static_cast<off_t>(offset));
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) return got == 0 ? EIO : errno;
    into += got;
    offset += static_cast<std::uint64_t>(got);
    count -= static_cast<std::size_t>(got);
  }
  return 0;
}

int sync_to_disk(int descriptor) {
  while (::fsync(descriptor) != 0) {
    if (errno == EINTR) continue;
    return errno == EINVAL || errno == EROFS || errno == ENOTSUP ? 0 : errno;
  }
  return 0;
}

}  // namespace soakwright
