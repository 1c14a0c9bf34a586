// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/fast/line_index.h"

#include <cstring>
#include <utility>

#include "core/read/fast/hot_loops.h"

namespace soakwright {
namespace {

// find_ends() writes a few entries more than it counts.
constexpr std::size_t kSlack = 128;

}  // namespace

void LineIndex::reserve(std::size_t bytes) {
  const std::size_t wanted = bytes + kSlack;
  if (wanted > line_capacity_) {
    lines_ = std::make_unique_for_overwrite<std::uint32_t[]>(wanted);
    line_capacity_ = wanted;
  }
  if (count_ + wanted > capacity_) {
    const std::size_t larger = 2 * count_ + wanted;
    auto ends = std::make_unique_for_overwrite<std::uint32_t[]>(larger);
    if (count_ != 0) std::memcpy(ends.get(), ends_.get(), count_ * sizeof(std::uint32_t));
    ends_ = std::move(ends);
    capacity_ = larger;
  }
}

void LineIndex::add(const char* text, std::size_t begin, std::size_t end, char delimiter, char line_end,
                    std::size_t from) {
  if (from != 0) {
    std::memmove(ends_.get(), ends_.get() + from, (count_ - from) * sizeof(std::uint32_t));
    count_ -= from;
  }
  reserve(end - begin);
  EndsFound found{ends_.get(), count_, lines_.get(), 0};
  hot_loops().find_ends(text, begin, end, delimiter, line_end, found);
  count_ = found.end_count;
  line_count_ = found.line_count;
}

}  // namespace soakwright
