// SPDX-License-Identifier: GPL-3.0-or-later
// Sudden changes of one channel that the others do not make, now or shortly before or after.
#pragma once

#include <cstddef>
#include <vector>

#include "core/phases/suspects/readings/examined_channel.h"

namespace soakwright {

struct SuddenStep {
  std::size_t before = 0;  ///< last cell that is surely before it
  std::size_t after = 0;   ///< first cell that is surely after it
  double onset_s = 0.0;    ///< where it begins, from the rows
  double before_k = 0.0;   ///< distance from the others before it
  double jump_k = 0.0;     ///< by how much that distance has changed after it
  double peak_k = 0.0;     ///< by how much it changes at most on the way, with the same sign
};

/// In time order.
std::vector<SuddenStep> sudden_steps(const ExaminedChannel& examined);

/// Smallest change that counts as a step for this channel.
double least_jump_k(const ExaminedChannel& examined);

/// Where a channel begins to leave the distance `before_k` from the others, in direction `sign`, between two
/// times.
double onset_of_excursion(const ExaminedChannel& examined, double from_s, double to_s, double before_k,
                          double jump_k);

}  // namespace soakwright
