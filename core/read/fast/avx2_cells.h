// SPDX-License-Identifier: GPL-3.0-or-later
// Plain decimals four at a time, for processors with AVX2: the arithmetic of parse_plain_decimal() in four
// lanes.
#pragma once

#include <cstddef>
#include <cstdint>

#include "core/read/fast/plain_decimal.h"

namespace soakwright {

/// HotLoops::parse_cells. Only where the processor has AVX2.
std::size_t parse_cells_by_four(const DecimalShape& shape, const char* text, std::uint32_t begin,
                                const std::uint32_t* ends, std::size_t count, std::int32_t* out,
                                std::size_t stride, std::uint32_t* left);

}  // namespace soakwright
