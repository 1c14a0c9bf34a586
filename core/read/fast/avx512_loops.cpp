// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/fast/avx512_loops.h"

#if defined(SOAKWRIGHT_SEVERAL_BUILDS)
// GCC 12's own AVX-512 header begins with registers of any content, which it then warns about (GCC bug
// 105593).
#if !defined(__clang__)
#pragma GCC diagnostic ignored "-Wmaybe-uninitialized"
#endif
#include <immintrin.h>

#define WIDEST [[gnu::target("avx512f,avx512bw,avx512vl,avx512vbmi2,bmi,bmi2,popcnt,lzcnt")]]

namespace soakwright {
namespace {

constexpr std::size_t kStep = 64;
constexpr std::size_t kLanes = 8;
constexpr unsigned kAllLanes = 0xFF;

WIDEST inline std::uint64_t bits_inside(std::size_t left) {
  return left >= kStep ? ~std::uint64_t{0} : (std::uint64_t{1} << left) - 1;
}

WIDEST inline __m128i two_words(const char* first, const char* second) {
  const __m128i low = _mm_loadl_epi64(reinterpret_cast<const __m128i*>(first));
  return _mm_castpd_si128(_mm_loadh_pd(_mm_castsi128_pd(low), reinterpret_cast<const double*>(second)));
}

WIDEST inline __m256i four_words(const char* text, const std::uint32_t* at) {
  return _mm256_inserti128_si256(_mm256_castsi128_si256(two_words(text + at[0], text + at[1])),
                                 two_words(text + at[2], text + at[3]), 1);
}

/// The eight bytes at each of eight places.
WIDEST inline __m512i eight_words(const char* text, const std::uint32_t* at) {
  const __m256i lower = four_words(text, at);
  const __m256i upper = four_words(text, at + 4);
  return _mm512_inserti64x4(_mm512_castsi256_si512(lower), upper, 1);
}

/// Eight cells with the places of the shape or fewer: four_shorter() in eight lanes. A bit for each that is
/// one, or empty.
WIDEST unsigned eight_shorter(const DecimalShape& shape, __m512i words, __m256i lengths, __m512i& units) {
  const __m512i zero = _mm512_setzero_si512();
  const __m512i all_bits = _mm512_set1_epi8(-1);
  const __m512i eight = _mm512_set1_epi64(8);
  const __m512i seven = _mm512_set1_epi64(7);
  const __m512i top_bits = _mm512_set1_epi64(static_cast<long long>(plain_decimal::kTopBits));
  const __m512i length = _mm512_cvtepu32_epi64(lengths);
  const __m512i outside = _mm512_sub_epi64(_mm512_set1_epi64(64), _mm512_slli_epi64(length, 3));
  const __m512i inside = _mm512_sllv_epi64(all_bits, outside);
  const __m512i unlike = _mm512_or_si512(_mm512_xor_si512(words, _mm512_set1_epi8(shape.decimal)),
                                         _mm512_xor_si512(inside, all_bits));
  const __m512i signs = _mm512_maskz_mov_epi8(_mm512_cmpeq_epi8_mask(unlike, zero), top_bits);
  const __m512i point = _mm512_srli_epi64(_mm512_and_si512(signs, _mm512_sub_epi64(zero, signs)), 7);
  // A byte for the point where there is one.
  const __m512i hole = _mm512_maskz_mov_epi64(_mm512_test_epi64_mask(point, point), eight);
  const __m512i before = _mm512_add_epi64(point, all_bits);
  const __m512i point_byte = _mm512_sub_epi64(_mm512_slli_epi64(point, 8), point);
  const __m512i joined = _mm512_or_si512(_mm512_sllv_epi64(_mm512_and_si512(words, before), hole),
                                         _mm512_andnot_si512(_mm512_or_si512(before, point_byte), words));
  const __m512i digits = _mm512_and_si512(_mm512_xor_si512(joined, _mm512_set1_epi8('0')),
                                          _mm512_sllv_epi64(all_bits, _mm512_add_epi64(outside, hole)));
  const __m512i wrong = _mm512_or_si512(_mm512_add_epi8(digits, _mm512_set1_epi8(0x76)), digits);

  // The point's byte, 7 for the last and where there is none; then the zeros that are wanted behind.
  const __m512i at = _mm512_sad_epu8(_mm512_and_si512(before, _mm512_set1_epi8(1)), zero);
  const __m512i zeros = _mm512_add_epi64(_mm512_min_epu32(at, seven),
                                         _mm512_set1_epi64(static_cast<long long>(shape.places) - 7));
  const __m512i count = _mm512_sub_epi64(length, _mm512_srli_epi64(hole, 3));
  const unsigned empty = _mm512_cmpeq_epi64_mask(length, zero);
  const unsigned unfit =
      static_cast<unsigned>(_mm512_test_epi64_mask(wrong, top_bits)) |
      static_cast<unsigned>(_mm512_cmpgt_epi64_mask(length, eight)) |
      static_cast<unsigned>(_mm512_cmpgt_epi64_mask(zero, zeros)) |
      static_cast<unsigned>(_mm512_cmpgt_epi64_mask(_mm512_add_epi64(count, zeros), eight)) |
      static_cast<unsigned>(_mm512_cmpeq_epi64_mask(count, zero));

  const __m512i number = _mm512_srlv_epi64(digits, _mm512_slli_epi64(zeros, 3));
  const __m512i pairs = _mm512_maddubs_epi16(number, _mm512_set1_epi16(0x010A));
  const __m512i sums = _mm512_madd_epi16(pairs, _mm512_set1_epi32(0x00010064));  // 100 and 1, alternating
  units = _mm512_add_epi64(_mm512_mul_epu32(sums, _mm512_set1_epi64(10'000)), _mm512_srli_epi64(sums, 32));
  return (~unfit | empty) & kAllLanes;
}

WIDEST inline void store_four(__m128i units, std::int32_t* out, std::size_t stride) {
  out[0] = _mm_cvtsi128_si32(units);
  out[stride] = _mm_extract_epi32(units, 1);
  out[2 * stride] = _mm_extract_epi32(units, 2);
  out[3 * stride] = _mm_extract_epi32(units, 3);
}

}  // namespace

bool has_avx512_loops() {
  __builtin_cpu_init();
  return __builtin_cpu_supports("avx512f") != 0 && __builtin_cpu_supports("avx512bw") != 0 &&
         __builtin_cpu_supports("avx512vl") != 0 && __builtin_cpu_supports("avx512vbmi2") != 0 &&
         __builtin_cpu_supports("bmi") != 0 && __builtin_cpu_supports("bmi2") != 0 &&
         __builtin_cpu_supports("popcnt") != 0;
}

WIDEST LineCount count_lines_widest(const char* begin, const char* end, char line_end) {
  const __m512i wanted = _mm512_set1_epi8(line_end);
  const __m512i carriage_return = _mm512_set1_epi8('\r');
  LineCount count;
  // Bit 0 of each carry is the byte before the step, bit 1 of `ends_before` the one before that.
  std::uint64_t end_before = 1;
  std::uint64_t end_two_before = begin[-2] == line_end ? 1 : 0;
  std::uint64_t return_before = 0;
  for (const char* at = begin; at < end; at += kStep) {
    const __m512i bytes = _mm512_loadu_si512(at);
    const std::uint64_t ends =
        _mm512_cmpeq_epi8_mask(bytes, wanted) & bits_inside(static_cast<std::size_t>(end - at));
    const std::uint64_t returns = _mm512_cmpeq_epi8_mask(bytes, carriage_return);
    const std::uint64_t before = (ends << 1) | end_before;
    const std::uint64_t two_before = (ends << 2) | (end_before << 1) | end_two_before;
    const std::uint64_t blank = ends & (before | (((returns << 1) | return_before) & two_before));
    count.lines += static_cast<std::size_t>(__builtin_popcountll(ends));
    count.blank += static_cast<std::size_t>(__builtin_popcountll(blank));
    end_before = ends >> 63;
    end_two_before = (ends >> 62) & 1;
    return_before = returns >> 63;
  }
  return count;
}

WIDEST void find_ends_widest(const char* text, std::size_t begin, std::size_t end, char delimiter,
                             char line_end, EndsFound& found) {
  const __m512i wanted_line = _mm512_set1_epi8(line_end);
  const __m512i wanted_delimiter = _mm512_set1_epi8(delimiter);
  const __m512i order =
      _mm512_set_epi8(63, 62, 61, 60, 59, 58, 57, 56, 55, 54, 53, 52, 51, 50, 49, 48, 47, 46, 45, 44, 43, 42,
                      41, 40, 39, 38, 37, 36, 35, 34, 33, 32, 31, 30, 29, 28, 27, 26, 25, 24, 23, 22, 21, 20,
                      19, 18, 17, 16, 15, 14, 13, 12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1, 0);
  std::size_t count = found.end_count;
  std::size_t line_count = found.line_count;
  for (std::size_t at = begin; at < end; at += kStep) {
    const __m512i bytes = _mm512_loadu_si512(text + at);
    const std::uint64_t inside = bits_inside(end - at);
    std::uint64_t lines = _mm512_cmpeq_epi8_mask(bytes, wanted_line) & inside;
    const std::uint64_t ends = lines | (_mm512_cmpeq_epi8_mask(bytes, wanted_delimiter) & inside);
    const auto here = static_cast<std::size_t>(__builtin_popcountll(ends));
    while (lines != 0) {
      const std::uint64_t below = (lines & (~lines + 1)) - 1;
      found.lines[line_count++] =
          static_cast<std::uint32_t>(count + static_cast<std::size_t>(__builtin_popcountll(ends & below)));
      lines &= lines - 1;
    }
    // Sixteen are written whether there are so many or not; more are rare.
    const __m512i places = _mm512_maskz_compress_epi8(ends, order);
    const __m512i base = _mm512_set1_epi32(static_cast<int>(at));
    std::uint32_t* const out = found.ends + count;
    _mm512_storeu_si512(out, _mm512_add_epi32(base, _mm512_cvtepu8_epi32(_mm512_castsi512_si128(places))));
    if (here > 16) [[unlikely]] {
      const __m128i second = _mm512_extracti32x4_epi32(places, 1);
      const __m128i third = _mm512_extracti32x4_epi32(places, 2);
      const __m128i fourth = _mm512_extracti32x4_epi32(places, 3);
      _mm512_storeu_si512(out + 16, _mm512_add_epi32(base, _mm512_cvtepu8_epi32(second)));
      _mm512_storeu_si512(out + 32, _mm512_add_epi32(base, _mm512_cvtepu8_epi32(third)));
      _mm512_storeu_si512(out + 48, _mm512_add_epi32(base, _mm512_cvtepu8_epi32(fourth)));
    }
    count += here;
  }
  found.end_count = count;
  found.line_count = line_count;
}

WIDEST std::size_t parse_cells_by_eight(const DecimalShape& shape, const char* text, std::uint32_t begin,
                                        const std::uint32_t* ends, std::size_t count, std::int32_t* out,
                                        std::size_t stride, std::uint32_t* left) {
  const __m512i zeros = _mm512_set1_epi64(static_cast<long long>(shape.zeros));
  const __m512i bounds = _mm512_set1_epi64(static_cast<long long>(shape.bounds));
  const __m512i top_bits = _mm512_set1_epi64(static_cast<long long>(plain_decimal::kTopBits));
  const __m512i tens = _mm512_set1_epi16(0x010A);  // 10 and 1, alternating
  const __m512i pair_weights = _mm512_set1_epi64(static_cast<long long>(shape.pair_weights));
  const __m512i high_weight = _mm512_set1_epi64(static_cast<long long>(shape.high_weight));
  const __m512i missing = _mm512_set1_epi64(INT32_MIN);
  const __m512i all_bits = _mm512_set1_epi64(-1);
  const __m512i word_bits = _mm512_set1_epi64(64);
  const __m256i one = _mm256_set1_epi32(1);
  const __m256i none = _mm256_setzero_si256();
  const __m256i shortest = _mm256_set1_epi32(static_cast<int>(shape.shortest));
  const __m256i most_more = _mm256_set1_epi32(static_cast<int>(plain_decimal::kLongest - shape.shortest));
  const char* const text_of_word = text - sizeof(std::uint64_t);

  __m256i end_before = _mm256_set1_epi32(static_cast<int>(begin - 1));  // in the last lane
  std::size_t left_count = 0;
  for (std::size_t done = 0; done < count; done += kLanes, out += kLanes * stride) {
    const std::size_t here = count - done < kLanes ? count - done : kLanes;
    std::uint32_t room[kLanes];
    const std::uint32_t* const at = ends_of_lanes(ends + done, here, room);
    const __m256i cell_ends = _mm256_loadu_si256(reinterpret_cast<const __m256i*>(at));
    const __m512i words = eight_words(text_of_word, at);
    const __m256i ends_before = _mm256_alignr_epi32(cell_ends, end_before, 7);
    end_before = cell_ends;
    const __m256i lengths = _mm256_sub_epi32(_mm256_sub_epi32(cell_ends, ends_before), one);

    // Nothing of the word is kept where the length is 0 or more than 8.
    const __m512i outside = _mm512_sub_epi64(word_bits, _mm512_slli_epi64(_mm512_cvtepu32_epi64(lengths), 3));
    const __m512i digits =
        _mm512_and_si512(_mm512_xor_si512(words, zeros), _mm512_sllv_epi64(all_bits, outside));
    const __m512i wrong = _mm512_or_si512(_mm512_add_epi8(digits, bounds), digits);
    const unsigned empty = _mm256_cmpeq_epi32_mask(lengths, none);
    const unsigned fits = _mm256_cmple_epu32_mask(_mm256_sub_epi32(lengths, shortest), most_more);
    const __m512i sums = _mm512_madd_epi16(_mm512_maddubs_epi16(digits, tens), pair_weights);
    __m512i units = _mm512_add_epi64(_mm512_mul_epu32(sums, high_weight), _mm512_srli_epi64(sums, 32));
    unsigned plain = (fits | empty) & ~static_cast<unsigned>(_mm512_test_epi64_mask(wrong, top_bits));
    if (plain != kAllLanes) [[unlikely]]
      plain = eight_shorter(shape, words, lengths, units);
    units = _mm512_mask_mov_epi64(units, static_cast<__mmask8>(empty), missing);
    const __m256i narrow = _mm512_cvtepi64_epi32(units);
    if (plain != kAllLanes || here < kLanes) [[unlikely]] {
      alignas(32) std::int32_t lanes[kLanes];
      _mm256_store_si256(reinterpret_cast<__m256i*>(lanes), narrow);
      const unsigned bad = ~plain & ((1U << here) - 1);
      left_count = parse_bad_lanes(shape, text, begin, ends, done, bad, lanes, left, left_count);
      for (std::size_t lane = 0; lane < here; ++lane) out[lane * stride] = lanes[lane];
      continue;
    }
    store_four(_mm256_castsi256_si128(narrow), out, stride);
    store_four(_mm256_extracti128_si256(narrow, 1), out + 4 * stride, stride);
  }
  return left_count;
}

}  // namespace soakwright
#endif
