// SPDX-License-Identifier: GPL-3.0-or-later
// SHA-256 of bytes as they are read (FIPS 180-4, by nettle).
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>

namespace soakwright {

/// Feed it piece by piece, then ask once.
class Sha256 {
 public:
  Sha256();
  ~Sha256();
  Sha256(Sha256&&) noexcept;
  Sha256& operator=(Sha256&&) noexcept;

  void update(const void* bytes, std::size_t size);
  void update(std::string_view bytes) { update(bytes.data(), bytes.size()); }
  /// 64 hexadecimal digits, lower case; the next update() begins anew.
  [[nodiscard]] std::string hex();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

std::string sha256_hex(std::string_view bytes);

}  // namespace soakwright
