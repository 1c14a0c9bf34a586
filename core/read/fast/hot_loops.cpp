// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/fast/hot_loops.h"

#include <array>
#include <bit>
#include <cstring>

#if defined(SOAKWRIGHT_SEVERAL_BUILDS)
#include <emmintrin.h>

#include "core/read/fast/avx2_cells.h"
#include "core/read/fast/avx512_loops.h"
#endif

// Each loop is written once, as a body that is inlined into two builds; the third stands in avx512_loops.cpp.
#if defined(__GNUC__) || defined(__clang__)
#define BODY [[gnu::always_inline]] inline
#else
#define BODY inline
#endif

namespace soakwright {
namespace {

constexpr std::size_t kStep = 64;

#if defined(SOAKWRIGHT_SEVERAL_BUILDS)
/// A bit for each of 64 bytes that is `wanted`.
BODY std::uint64_t mask_of(const char* text, char wanted) {
  const __m128i pattern = _mm_set1_epi8(wanted);
  std::uint64_t mask = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    const __m128i piece = _mm_loadu_si128(reinterpret_cast<const __m128i*>(text + 16 * i));
    mask |=
        static_cast<std::uint64_t>(static_cast<unsigned>(_mm_movemask_epi8(_mm_cmpeq_epi8(piece, pattern))))
        << (16 * i);
  }
  return mask;
}
#else
BODY std::uint64_t mask_of(const char* text, char wanted) {
  std::uint64_t mask = 0;
  for (std::size_t i = 0; i < kStep; ++i) mask |= static_cast<std::uint64_t>(text[i] == wanted) << i;
  return mask;
}
#endif

/// The bits of a step that lie before `end`.
BODY std::uint64_t bits_inside(std::size_t left) {
  return left >= kStep ? ~std::uint64_t{0} : (std::uint64_t{1} << left) - 1;
}

BODY LineCount count_lines_body(const char* begin, const char* end, char line_end) {
  LineCount count;
  // Bit 0 of each carry is the byte before the step, bit 1 of `ends_before` the one before that.
  std::uint64_t end_before = 1;
  std::uint64_t end_two_before = begin[-2] == line_end ? 1 : 0;
  std::uint64_t return_before = 0;
  for (const char* at = begin; at < end; at += kStep) {
    const std::uint64_t ends = mask_of(at, line_end) & bits_inside(static_cast<std::size_t>(end - at));
    if (ends == 0 && return_before == 0) {
      end_before = end_two_before = 0;
      return_before = at[kStep - 1] == '\r' ? 1 : 0;
      continue;
    }
    const std::uint64_t returns = mask_of(at, '\r');
    const std::uint64_t before = (ends << 1) | end_before;
    const std::uint64_t two_before = (ends << 2) | (end_before << 1) | end_two_before;
    const std::uint64_t blank = ends & (before | (((returns << 1) | return_before) & two_before));
    count.lines += static_cast<std::size_t>(std::popcount(ends));
    count.blank += static_cast<std::size_t>(std::popcount(blank));
    end_before = ends >> 63;
    end_two_before = (ends >> 62) & 1;
    return_before = returns >> 63;
  }
  return count;
}

BODY void find_ends_body(const char* text, std::size_t begin, std::size_t end, char delimiter, char line_end,
                         EndsFound& found) {
  std::size_t count = found.end_count;
  std::size_t line_count = found.line_count;
  for (std::size_t at = begin; at < end; at += kStep) {
    const std::uint64_t inside = bits_inside(end - at);
    std::uint64_t lines = mask_of(text + at, line_end) & inside;
    std::uint64_t ends = lines | (mask_of(text + at, delimiter) & inside);
    const auto here = static_cast<std::size_t>(std::popcount(ends));
    while (lines != 0) {
      const std::uint64_t below = (lines & (~lines + 1)) - 1;
      found.lines[line_count++] =
          static_cast<std::uint32_t>(count + static_cast<std::size_t>(std::popcount(ends & below)));
      lines &= lines - 1;
    }
    // A fixed number of stores: how many are wanted does not have to be guessed by the processor.
    std::uint32_t* const out = found.ends + count;
    const auto base = static_cast<std::uint32_t>(at);
    for (std::size_t i = 0; i < 12; ++i) {
      out[i] = base + static_cast<std::uint32_t>(std::countr_zero(ends));
      ends &= ends - 1;
    }
    for (std::size_t i = 12; i < here; ++i) {
      out[i] = base + static_cast<std::uint32_t>(std::countr_zero(ends));
      ends &= ends - 1;
    }
    count += here;
  }
  found.end_count = count;
  found.line_count = line_count;
}

std::size_t parse_cells_plain(const DecimalShape& given, const char* text, std::uint32_t begin,
                              const std::uint32_t* ends, std::size_t count, std::int32_t* out,
                              std::size_t stride, std::uint32_t* left) {
  const DecimalShape shape = given;
  std::size_t left_count = 0;
  for (std::size_t i = 0; i < count; ++i, out += stride) {
    const std::uint32_t end = ends[i];
    std::int32_t units = 0;
    if (!parse_plain_decimal(shape, text, begin, end, units)) [[unlikely]] {
      if (end == begin) {
        units = INT32_MIN;
      } else if (!parse_shorter_decimal(shape, text, begin, end, units)) {
        units = INT32_MIN;
        left[left_count++] = static_cast<std::uint32_t>(i);
      }
    }
    *out = units;
    begin = end + 1;
  }
  return left_count;
}

BODY void find_extremes_body(const std::int32_t* units, std::size_t count, Extremes& extremes) {
  std::int32_t low = extremes.low;
  std::int32_t high = extremes.high;
  std::int32_t missing = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const std::int32_t value = units[i];
    // All bits where it is missing: INT32_MIN then becomes INT32_MAX. Written so, it stays free of branches.
    const std::int32_t gone = -static_cast<std::int32_t>(value == INT32_MIN);
    const std::int32_t for_low = value ^ gone;
    missing -= gone;
    low = for_low < low ? for_low : low;
    high = value > high ? value : high;
  }
  extremes.low = low;
  extremes.high = high;
  extremes.there += count - static_cast<std::size_t>(missing);
}

LineCount count_lines_plain(const char* begin, const char* end, char line_end) {
  return count_lines_body(begin, end, line_end);
}
void find_ends_plain(const char* text, std::size_t begin, std::size_t end, char delimiter, char line_end,
                     EndsFound& found) {
  find_ends_body(text, begin, end, delimiter, line_end, found);
}
void find_extremes_plain(const std::int32_t* units, std::size_t count, Extremes& extremes) {
  find_extremes_body(units, count, extremes);
}

#if defined(SOAKWRIGHT_SEVERAL_BUILDS)
#define WIDE [[gnu::target("avx2,bmi,bmi2,popcnt,lzcnt")]]
WIDE LineCount count_lines_wide(const char* begin, const char* end, char line_end) {
  return count_lines_body(begin, end, line_end);
}
WIDE void find_ends_wide(const char* text, std::size_t begin, std::size_t end, char delimiter, char line_end,
                         EndsFound& found) {
  find_ends_body(text, begin, end, delimiter, line_end, found);
}
WIDE void find_extremes_wide(const std::int32_t* units, std::size_t count, Extremes& extremes) {
  find_extremes_body(units, count, extremes);
}
constexpr std::array<HotLoops, 3> kBuilds{
    {{count_lines_plain, find_ends_plain, parse_cells_plain, find_extremes_plain},
     {count_lines_wide, find_ends_wide, parse_cells_by_four, find_extremes_wide},
     {count_lines_widest, find_ends_widest, parse_cells_by_eight, find_extremes_wide}}};

std::size_t builds_here() {
  __builtin_cpu_init();
  const bool wide = __builtin_cpu_supports("avx2") != 0 && __builtin_cpu_supports("bmi") != 0 &&
                    __builtin_cpu_supports("bmi2") != 0 && __builtin_cpu_supports("popcnt") != 0;
  return wide ? has_avx512_loops() ? 3 : 2 : 1;
}
#else
constexpr std::array<HotLoops, 1> kBuilds{
    {{count_lines_plain, find_ends_plain, parse_cells_plain, find_extremes_plain}}};

std::size_t builds_here() { return 1; }
#endif

}  // namespace

std::span<const HotLoops> builds_of_hot_loops() {
  static const std::size_t count = builds_here();
  return std::span{kBuilds}.first(count);
}

const HotLoops& hot_loops() { return builds_of_hot_loops().back(); }

}  // namespace soakwright
