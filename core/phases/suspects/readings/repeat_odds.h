// SPDX-License-Identifier: GPL-3.0-or-later
// How unlikely it is that a channel repeats a reading by chance, by its own scatter elsewhere in the record.
//
// A recorder of whole degrees on a quiet furnace repeats its reading for hours, and is right. What tells the
// two apart is the noise against the last digit. A reading bends by x[i-1] - 2 x[i] + x[i+1]; rounding alone
// makes bends of two digits at most on a straight course, wherever its level lies between two digits; bends
// of three and more are noise, and their share says how much of it there is at least.
#pragma once

#include <cstddef>
#include <vector>

#include "core/phases/suspects/readings/row_readings.h"

namespace soakwright {

/// What 16 rows of a channel show; rows in long runs of equal readings do not count.
struct BendBlock {
  unsigned char bends = 0;   ///< readings with a neighbour on either side
  unsigned char strong = 0;  ///< of these, bends of three digits and more
  unsigned char pairs = 0;   ///< of neighbours
  unsigned char equal = 0;   ///< of these, alike
  bool flat = false;         ///< the course hardly moves
};

inline constexpr std::size_t kBendBlock = 16;  // rows

/// By blocks of kBendBlock rows. `beside` is another channel of the same scale, or null: a bend that both
/// have is the furnace's and no noise.
std::vector<BendBlock> bend_blocks(const RowTable& table, const RowReadings& channel,
                                   const RowReadings* beside, const std::vector<RowRun>& long_runs);

/// -ln of the greatest chance that one more reading is the same, by the blocks outside rows
/// [first, last]; 0 where the record shows no such noise, or too little of it is there to tell.
double repeat_surprise(const std::vector<BendBlock>& blocks, std::size_t first, std::size_t last,
                       double interval_s);

/// Whether the blocks within rows [first, last] show noise of a third of a digit and more.
bool shows_noise(const std::vector<BendBlock>& blocks, std::size_t first, std::size_t last);

}  // namespace soakwright
