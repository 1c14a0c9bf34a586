// Plain decimals four at a time, for processors with AVX2: the arithmetic of parse_plain_decimal() in four
// lanes.
#pragma once

#include <cstddef>
#include <cstdint>

#include "core/read/plain_decimal.h"

namespace soakwright {

/// Cells that end at ends[0 …] and begin behind ends[-1 …]; empty ones become INT32_MIN. Gives how many it
/// read: a multiple of four, up to the first four in which one is neither plain (with the places of the
/// shape, or fewer) nor empty. Only where the processor has AVX2.
std::size_t parse_cells_by_four(const DecimalShape& shape, const char* text, const std::uint32_t* ends,
                                std::size_t count, std::int32_t* out, std::size_t stride);

}  // namespace soakwright
