// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/fast/avx2_cells.h"

#if defined(__x86_64__) && (defined(__GNUC__) || defined(__clang__))
#include <immintrin.h>

namespace soakwright {
namespace {

constexpr std::size_t kLanes = 4;
constexpr unsigned kAllLanes = 0xF;

[[gnu::target("avx2")]] inline __m128i two_words(const char* first, const char* second) {
  const __m128i low = _mm_loadl_epi64(reinterpret_cast<const __m128i*>(first));
  return _mm_castpd_si128(_mm_loadh_pd(_mm_castsi128_pd(low), reinterpret_cast<const double*>(second)));
}

/// A bit for each lane in which not every bit of `mask` is 0.
[[gnu::target("avx2")]] inline unsigned lanes_with(__m256i mask) {
  const __m256i nothing = _mm256_cmpeq_epi64(mask, _mm256_setzero_si256());
  return ~static_cast<unsigned>(_mm256_movemask_pd(_mm256_castsi256_pd(nothing))) & kAllLanes;
}

/// Four cells with the places of the shape or fewer: the arithmetic of parse_shorter_decimal() without signs.
/// A bit for each that is one, or empty; none for one longer than eight digits once zeros stand for the
/// places that it does not have.
[[gnu::target("avx2")]] inline unsigned four_shorter(const DecimalShape& shape, __m256i words,
                                                     __m128i lengths, __m256i& units) {
  const __m256i zero = _mm256_setzero_si256();
  const __m256i all_bits = _mm256_set1_epi8(-1);
  const __m256i eight = _mm256_set1_epi64x(8);
  const __m256i seven = _mm256_set1_epi64x(7);
  const __m256i top_bits = _mm256_set1_epi64x(static_cast<long long>(plain_decimal::kTopBits));
  const __m256i length = _mm256_cvtepu32_epi64(lengths);
  const __m256i outside = _mm256_sub_epi64(_mm256_set1_epi64x(64), _mm256_slli_epi64(length, 3));
  const __m256i inside = _mm256_sllv_epi64(all_bits, outside);
  const __m256i unlike = _mm256_or_si256(_mm256_xor_si256(words, _mm256_set1_epi8(shape.decimal)),
                                         _mm256_xor_si256(inside, all_bits));
  const __m256i signs = _mm256_and_si256(_mm256_cmpeq_epi8(unlike, zero), top_bits);
  const __m256i point = _mm256_srli_epi64(_mm256_and_si256(signs, _mm256_sub_epi64(zero, signs)), 7);
  // A byte for the point where there is one.
  const __m256i hole = _mm256_andnot_si256(_mm256_cmpeq_epi64(point, zero), eight);
  const __m256i before = _mm256_add_epi64(point, all_bits);
  const __m256i point_byte = _mm256_sub_epi64(_mm256_slli_epi64(point, 8), point);
  const __m256i joined = _mm256_or_si256(_mm256_sllv_epi64(_mm256_and_si256(words, before), hole),
                                         _mm256_andnot_si256(_mm256_or_si256(before, point_byte), words));
  const __m256i digits = _mm256_and_si256(_mm256_xor_si256(joined, _mm256_set1_epi8('0')),
                                          _mm256_sllv_epi64(all_bits, _mm256_add_epi64(outside, hole)));
  const __m256i wrong = _mm256_or_si256(_mm256_add_epi8(digits, _mm256_set1_epi8(0x76)), digits);

  // The point's byte, 7 for the last and where there is none; then the zeros that are wanted behind.
  const __m256i at = _mm256_sad_epu8(_mm256_and_si256(before, _mm256_set1_epi8(1)), zero);
  const __m256i zeros = _mm256_add_epi64(_mm256_min_epu32(at, seven),
                                         _mm256_set1_epi64x(static_cast<long long>(shape.places) - 7));
  const __m256i count = _mm256_sub_epi64(length, _mm256_srli_epi64(hole, 3));
  const __m256i empty = _mm256_cmpeq_epi64(length, zero);
  const __m256i unfit =
      _mm256_or_si256(_mm256_or_si256(_mm256_cmpgt_epi64(length, eight), _mm256_cmpgt_epi64(zero, zeros)),
                      _mm256_or_si256(_mm256_cmpgt_epi64(_mm256_add_epi64(count, zeros), eight),
                                      _mm256_cmpeq_epi64(count, zero)));

  const __m256i number = _mm256_srlv_epi64(digits, _mm256_slli_epi64(zeros, 3));
  const __m256i pairs = _mm256_maddubs_epi16(number, _mm256_set1_epi16(0x010A));
  const __m256i sums = _mm256_madd_epi16(pairs, _mm256_set1_epi32(0x00010064));  // 100 and 1, alternating
  units = _mm256_add_epi64(_mm256_mul_epu32(sums, _mm256_set1_epi64x(10'000)), _mm256_srli_epi64(sums, 32));
  const unsigned bad = lanes_with(unfit) | lanes_with(_mm256_and_si256(wrong, top_bits));
  return (~bad | lanes_with(empty)) & kAllLanes;
}

}  // namespace

[[gnu::target("avx2")]] std::size_t parse_cells_by_four(const DecimalShape& shape, const char* text,
                                                        std::uint32_t begin, const std::uint32_t* ends,
                                                        std::size_t count, std::int32_t* out,
                                                        std::size_t stride, std::uint32_t* left) {
  const __m256i zeros = _mm256_set1_epi64x(static_cast<long long>(shape.zeros));
  const __m256i bounds = _mm256_set1_epi64x(static_cast<long long>(shape.bounds));
  const __m256i top_bits = _mm256_set1_epi64x(static_cast<long long>(plain_decimal::kTopBits));
  const __m256i tens = _mm256_set1_epi16(0x010A);  // 10 and 1, alternating
  const __m256i pair_weights = _mm256_set1_epi64x(static_cast<long long>(shape.pair_weights));
  const __m256i high_weight = _mm256_set1_epi64x(static_cast<long long>(shape.high_weight));
  const __m256i missing = _mm256_set1_epi64x(static_cast<long long>(static_cast<std::uint32_t>(INT32_MIN)));
  const __m256i all_bits = _mm256_set1_epi64x(-1);
  const __m256i word_bits = _mm256_set1_epi64x(64);
  const __m128i one = _mm_set1_epi32(1);
  const __m128i none = _mm_setzero_si128();
  const __m128i shortest = _mm_set1_epi32(static_cast<int>(shape.shortest));
  const __m128i most_more = _mm_set1_epi32(static_cast<int>(plain_decimal::kLongest - shape.shortest));

  const char* const text_of_word = text - 8;
  __m128i end_before = _mm_set1_epi32(static_cast<int>(begin - 1));  // in the last lane
  std::size_t left_count = 0;
  for (std::size_t done = 0; done < count; done += kLanes, out += kLanes * stride) {
    const std::size_t here = count - done < kLanes ? count - done : kLanes;
    std::uint32_t room[kLanes];
    const std::uint32_t* const at = ends_of_lanes(ends + done, here, room);
    const __m128i cell_ends = _mm_loadu_si128(reinterpret_cast<const __m128i*>(at));
    const __m256i words = _mm256_set_m128i(two_words(text_of_word + at[2], text_of_word + at[3]),
                                           two_words(text_of_word + at[0], text_of_word + at[1]));
    const __m128i ends_before = _mm_alignr_epi8(cell_ends, end_before, 12);
    end_before = cell_ends;
    const __m128i lengths = _mm_sub_epi32(_mm_sub_epi32(cell_ends, ends_before), one);

    // Nothing of the word is kept where the length is 0 or more than 8.
    const __m256i outside = _mm256_sub_epi64(word_bits, _mm256_slli_epi64(_mm256_cvtepu32_epi64(lengths), 3));
    const __m256i digits =
        _mm256_and_si256(_mm256_xor_si256(words, zeros), _mm256_sllv_epi64(all_bits, outside));
    const __m256i wrong = _mm256_or_si256(_mm256_add_epi8(digits, bounds), digits);
    const __m128i more = _mm_sub_epi32(lengths, shortest);
    const __m128i fits = _mm_cmpeq_epi32(_mm_min_epu32(more, most_more), more);
    const __m128i empty = _mm_cmpeq_epi32(lengths, none);
    const bool lengths_fit = _mm_movemask_epi8(_mm_or_si128(fits, empty)) == 0xFFFF;
    const __m256i sums = _mm256_madd_epi16(_mm256_maddubs_epi16(digits, tens), pair_weights);
    __m256i units = _mm256_add_epi64(_mm256_mul_epu32(sums, high_weight), _mm256_srli_epi64(sums, 32));
    unsigned plain = kAllLanes;
    if (!lengths_fit || _mm256_testz_si256(wrong, top_bits) == 0) [[unlikely]]
      plain = four_shorter(shape, words, lengths, units);
    units = _mm256_blendv_epi8(units, missing, _mm256_cvtepi32_epi64(empty));
    if (plain != kAllLanes || here < kLanes) [[unlikely]] {
      alignas(32) std::int64_t wide[kLanes];
      _mm256_store_si256(reinterpret_cast<__m256i*>(wide), units);
      std::int32_t lanes[kLanes];
      for (std::size_t lane = 0; lane < kLanes; ++lane) lanes[lane] = static_cast<std::int32_t>(wide[lane]);
      const unsigned bad = ~plain & ((1U << here) - 1);
      left_count = parse_bad_lanes(shape, text, begin, ends, done, bad, lanes, left, left_count);
      for (std::size_t lane = 0; lane < here; ++lane) out[lane * stride] = lanes[lane];
      continue;
    }
    const __m128i first = _mm256_castsi256_si128(units);
    const __m128i second = _mm256_extracti128_si256(units, 1);
    out[0] = _mm_cvtsi128_si32(first);
    out[stride] = _mm_extract_epi32(first, 2);
    out[2 * stride] = _mm_cvtsi128_si32(second);
    out[3 * stride] = _mm_extract_epi32(second, 2);
  }
  return left_count;
}

}  // namespace soakwright
#endif
