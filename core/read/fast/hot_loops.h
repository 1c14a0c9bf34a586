// SPDX-License-Identifier: GPL-3.0-or-later
// The four loops that see every byte or every cell of a log, each in three builds: for any processor, for one
// with AVX2 and its companions, and for one with AVX-512. All give the same; only the time differs.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>

#include "core/read/fast/plain_decimal.h"

#if defined(__x86_64__) && (defined(__GNUC__) || defined(__clang__))
#define SOAKWRIGHT_SEVERAL_BUILDS 1
#endif

namespace soakwright {

struct LineCount {
  std::size_t lines = 0;
  std::size_t blank = 0;  ///< among them, those with nothing on them but perhaps '\r'
};

/// Where cells end, as LineIndex collects it: both arrays have room, 64 entries more than is needed.
struct EndsFound {
  std::uint32_t* ends = nullptr;
  std::size_t end_count = 0;
  std::uint32_t* lines = nullptr;
  std::size_t line_count = 0;
};

struct Extremes {
  std::int32_t low = INT32_MAX;
  std::int32_t high = INT32_MIN;
  std::size_t there = 0;
};

struct HotLoops {
  /// Line ends in [begin, end). The two bytes before `begin` can be read, the last of them a line end; so can
  /// the 64 bytes from `end` on.
  LineCount (*count_lines)(const char* begin, const char* end, char line_end);
  /// Delimiters and line ends of text[begin, end), added to what is there. 64 bytes from `end` on can be
  /// read.
  void (*find_ends)(const char* text, std::size_t begin, std::size_t end, char delimiter, char line_end,
                    EndsFound& found);
  /// Cells one after the other: the first begins at text[begin], each ends at its place in `ends`. Writes
  /// each value `stride` further, for an empty cell ColumnStore::kMissing; so too for one that is no plain
  /// decimal, whose place it puts into `left`, which has room for `count`. Gives how many are left. Eight
  /// bytes on either side of the cells can be read.
  std::size_t (*parse_cells)(const DecimalShape& shape, const char* text, std::uint32_t begin,
                             const std::uint32_t* ends, std::size_t count, std::int32_t* out,
                             std::size_t stride, std::uint32_t* left);
  /// Adds what is in `units` to `extremes`; INT32_MIN is missing.
  void (*find_extremes)(const std::int32_t* units, std::size_t count, Extremes& extremes);
};

/// The builds that this processor can run: one to three, the fastest last.
std::span<const HotLoops> builds_of_hot_loops();
/// The fastest.
const HotLoops& hot_loops();

}  // namespace soakwright
