// SPDX-License-Identifier: GPL-3.0-or-later
// An open file of the system, and what is asked of it with every error looked at.
#pragma once

#include <cstdint>
#include <string_view>

namespace soakwright {

/// Closes the file at its end. close() tells how closing went.
class Descriptor {
 public:
  explicit Descriptor(int number = -1) : number_(number) {}
  ~Descriptor();
  Descriptor(Descriptor&& other) noexcept;
  Descriptor& operator=(Descriptor&& other) noexcept;
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  [[nodiscard]] int number() const { return number_; }
  [[nodiscard]] bool open() const { return number_ >= 0; }
  bool close();

 private:
  int number_;
};

/// 0, or the error that stopped it.
int write_all(int descriptor, std::string_view bytes);
/// `count` bytes from `offset`: 0, or the error; EIO where the file ends before.
int read_all_at(int descriptor, std::uint64_t offset, char* into, std::size_t count);
/// 0, or the error. Some file systems cannot sync; that is no error of the file.
int sync_to_disk(int descriptor);

}  // namespace soakwright
