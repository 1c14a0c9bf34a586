// Plain decimals four at a time, for processors with AVX2: the arithmetic of parse_plain_decimal() in four
// lanes.
#pragma once

#include <cstddef>
#include <cstdint>

#include "core/read/plain_decimal.h"

namespace soakwright {

/// Cells one after the other: the first begins at text[begin], each ends at its place in `ends`; empty ones
/// become INT32_MIN. Gives how many it read: up to the first that is neither plain (with the places of the
/// shape, or fewer) nor empty, or to where less than four are left. Only where the processor has AVX2.
std::size_t parse_cells_by_four(const DecimalShape& shape, const char* text, std::uint32_t begin,
                                const std::uint32_t* ends, std::size_t count, std::int32_t* out,
                                std::size_t stride);

}  // namespace soakwright
