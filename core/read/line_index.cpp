#include "core/read/line_index.h"

#include <bit>
#include <cstring>
#include <utility>

#if defined(__SSE2__)
#include <emmintrin.h>
#endif

namespace soakwright {
namespace {

struct Masks {
  std::uint64_t ends;
  std::uint64_t lines;
};

#if defined(__SSE2__)
Masks masks_of(const char* text, char delimiter, char line_end) {
  const __m128i delimiters = _mm_set1_epi8(delimiter);
  const __m128i line_ends = _mm_set1_epi8(line_end);
  Masks masks{0, 0};
  for (std::size_t i = 0; i < 4; ++i) {
    const __m128i piece = _mm_loadu_si128(reinterpret_cast<const __m128i*>(text + 16 * i));
    const __m128i lines = _mm_cmpeq_epi8(piece, line_ends);
    const __m128i ends = _mm_or_si128(lines, _mm_cmpeq_epi8(piece, delimiters));
    masks.lines |= static_cast<std::uint64_t>(static_cast<unsigned>(_mm_movemask_epi8(lines))) << (16 * i);
    masks.ends |= static_cast<std::uint64_t>(static_cast<unsigned>(_mm_movemask_epi8(ends))) << (16 * i);
  }
  return masks;
}
#else
Masks masks_of(const char* text, char delimiter, char line_end) {
  Masks masks{0, 0};
  for (unsigned i = 0; i < 64; ++i) {
    masks.lines |= static_cast<std::uint64_t>(text[i] == line_end) << i;
    masks.ends |= static_cast<std::uint64_t>(text[i] == line_end || text[i] == delimiter) << i;
  }
  return masks;
}
#endif

constexpr std::size_t kStep = 64;

}  // namespace

void LineIndex::reserve(std::size_t bytes) {
  const std::size_t wanted = bytes + 2 * kStep;
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
  line_count_ = 0;
  reserve(end - begin);
  for (std::size_t at = begin; at < end; at += kStep) {
    Masks masks = masks_of(text + at, delimiter, line_end);
    if (end - at < kStep) {
      const std::uint64_t inside = (std::uint64_t{1} << (end - at)) - 1;
      masks.ends &= inside;
      masks.lines &= inside;
    }
    std::uint32_t* out = ends_.get() + count_;
    const auto base = static_cast<std::uint32_t>(at);
    const auto found = static_cast<std::size_t>(std::popcount(masks.ends));
    while (masks.lines != 0) {
      const std::uint64_t before = masks.lines & (~masks.lines + 1);
      lines_[line_count_++] = static_cast<std::uint32_t>(
          count_ + static_cast<std::size_t>(std::popcount(masks.ends & (before - 1))));
      masks.lines &= masks.lines - 1;
    }
    // A fixed number of stores first: their count does not have to be guessed by the processor.
    std::uint64_t rest = masks.ends;
    for (std::size_t i = 0; i < 12; ++i) {
      out[i] = base + static_cast<std::uint32_t>(std::countr_zero(rest));
      rest &= rest - 1;
    }
    if (found > 12) [[unlikely]] {
      for (std::size_t i = 12; i < found; ++i) {
        out[i] = base + static_cast<std::uint32_t>(std::countr_zero(rest));
        rest &= rest - 1;
      }
    }
    count_ += found;
  }
}

}  // namespace soakwright
