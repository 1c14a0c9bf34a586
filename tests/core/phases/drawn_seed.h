// SPDX-License-Identifier: GPL-3.0-or-later
// A seed that nobody chose: drawn anew at each run, and printed, so that a run can be had again.
#pragma once

#include <cstdint>
#include <cstdlib>
#include <random>
#include <string>

namespace soakwright::made {

/// `SOAKWRIGHT_SEED` in the environment is taken instead, to have a run again.
inline std::uint64_t draw_seed() {
  if (const char* again = std::getenv("SOAKWRIGHT_SEED")) return std::strtoull(again, nullptr, 10);
  std::random_device device;
  return (static_cast<std::uint64_t>(device()) << 20) ^ device();
}

/// Without a locale's digit grouping.
inline std::string seed_text(std::uint64_t seed) {
  return std::string("SOAKWRIGHT_SEED=").append(std::to_string(seed));
}

}  // namespace soakwright::made
