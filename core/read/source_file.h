// SPDX-License-Identifier: GPL-3.0-or-later
// A log on disk, opened for reading at any place. Only ordinary files: a pipe or a device can neither be read
// twice nor has it an end that one could trust.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>

#include "core/problems/problem.h"

namespace soakwright {

class SourceFile {
 public:
  static Result<SourceFile> open(const std::string& path);
  ~SourceFile();
  SourceFile(SourceFile&& other) noexcept;
  SourceFile& operator=(SourceFile&& other) noexcept;
  SourceFile(const SourceFile&) = delete;
  SourceFile& operator=(const SourceFile&) = delete;

  /// Size when it was opened; bytes written later are not read.
  [[nodiscard]] std::uint64_t bytes() const { return bytes_; }
  /// Up to `count` bytes from `offset`; fewer only at the end; negative where the system reports an error.
  [[nodiscard]] std::ptrdiff_t read_at(std::uint64_t offset, char* into, std::size_t count) const;

 private:
  SourceFile(int descriptor, std::uint64_t bytes) : descriptor_(descriptor), bytes_(bytes) {}
  int descriptor_ = -1;
  std::uint64_t bytes_ = 0;
};

}  // namespace soakwright
