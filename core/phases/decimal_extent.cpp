// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/decimal_extent.h"

#include <algorithm>
#include <limits>

#if defined(__x86_64__) && (defined(__GNUC__) || defined(__clang__))
#define SOAKWRIGHT_TWO_BUILDS 1
#endif

namespace soakwright {
namespace {

constexpr std::int32_t kNoHigh = std::numeric_limits<std::int32_t>::min();
constexpr std::int32_t kNoLow = std::numeric_limits<std::int32_t>::max();
static_assert(kNoHigh == Readings::kMissingUnits, "what is missing is never the highest");

// Written once, inlined into a build for any processor and one for those with AVX2.
#if defined(__GNUC__) || defined(__clang__)
#define BODY [[gnu::always_inline]] inline
#else
#define BODY inline
#endif

BODY void widen_body(const std::int32_t* units, std::size_t count, std::int32_t* high, std::int32_t* low) {
  for (std::size_t i = 0; i < count; ++i) {
    const std::int32_t here = units[i];
    const std::int32_t for_low = here == Readings::kMissingUnits ? kNoLow : here;
    high[i] = here > high[i] ? here : high[i];
    low[i] = for_low < low[i] ? for_low : low[i];
  }
}

void widen_plain(const std::int32_t* units, std::size_t count, std::int32_t* high, std::int32_t* low) {
  widen_body(units, count, high, low);
}

#if defined(SOAKWRIGHT_TWO_BUILDS)
[[gnu::target("avx2")]] void widen_wide(const std::int32_t* units, std::size_t count, std::int32_t* high,
                                        std::int32_t* low) {
  widen_body(units, count, high, low);
}
#endif

void widen(const std::int32_t* units, std::size_t count, std::int32_t* high, std::int32_t* low) {
#if defined(SOAKWRIGHT_TWO_BUILDS)
  __builtin_cpu_init();
  static const bool wide = __builtin_cpu_supports("avx2") != 0;
  if (wide) return widen_wide(units, count, high, low);
#endif
  widen_plain(units, count, high, low);
}

}  // namespace

DecimalExtent::DecimalExtent(std::size_t rows) : high_(rows, kNoHigh), low_(rows, kNoLow) {}

void DecimalExtent::take(std::size_t row, const std::int32_t* units, std::size_t count) {
  widen(units, count, high_.data() + row, low_.data() + row);
}

std::uint32_t DecimalExtent::widest() const {
  std::uint32_t most = 0;
  for (std::size_t i = 0; i < high_.size(); ++i) {
    // Whole numbers of either sign lie up to 2^32 - 1 apart.
    const std::uint32_t apart = static_cast<std::uint32_t>(high_[i]) - static_cast<std::uint32_t>(low_[i]);
    most = std::max(most, high_[i] > low_[i] ? apart : 0U);
  }
  return most;
}

}  // namespace soakwright
