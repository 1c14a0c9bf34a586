// SPDX-License-Identifier: GPL-3.0-or-later
// The loops of hot_loops.h for processors with AVX-512 and its byte instructions: 64 bytes compared at once,
// places of ends squeezed together by the processor, cells eight at a time.
#pragma once

#include <cstddef>
#include <cstdint>

#include "core/read/fast/hot_loops.h"

namespace soakwright {

#if defined(SOAKWRIGHT_SEVERAL_BUILDS)
/// Whether this processor can run them.
bool has_avx512_loops();

LineCount count_lines_widest(const char* begin, const char* end, char line_end);
void find_ends_widest(const char* text, std::size_t begin, std::size_t end, char delimiter, char line_end,
                      EndsFound& found);
std::size_t parse_cells_by_eight(const DecimalShape& shape, const char* text, std::uint32_t begin,
                                 const std::uint32_t* ends, std::size_t count, std::int32_t* out,
                                 std::size_t stride, std::uint32_t* left);
#endif

}  // namespace soakwright
