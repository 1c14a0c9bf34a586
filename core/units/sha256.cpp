// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/sha256.h"

#include <cstdint>

#include <nettle/sha2.h>

namespace soakwright {

struct Sha256::State {
  sha256_ctx context;
};

Sha256::Sha256() : state_(std::make_unique<State>()) { sha256_init(&state_->context); }
Sha256::~Sha256() = default;
Sha256::Sha256(Sha256&&) noexcept = default;
Sha256& Sha256::operator=(Sha256&&) noexcept = default;

void Sha256::update(const void* bytes, std::size_t size) {
  sha256_update(&state_->context, size, static_cast<const std::uint8_t*>(bytes));
}

std::string Sha256::hex() {
  std::uint8_t digest[SHA256_DIGEST_SIZE];
  sha256_digest(&state_->context, sizeof digest, digest);
  constexpr char kDigits[] = "0123456789abcdef";
  std::string out;
  out.reserve(2 * sizeof digest);
  for (const std::uint8_t byte : digest) {
    out += kDigits[byte >> 4U];
    out += kDigits[byte & 15U];
  }
  return out;
}

std::string sha256_hex(std::string_view bytes) {
  Sha256 sum;
  sum.update(bytes);
  return sum.hex();
}

}  // namespace soakwright
