// SPDX-License-Identifier: GPL-3.0-or-later
// The course as the fewest straight pieces that follow it within what matters.
//
// Optimal partition by dynamic programming: the sum of squared distances to each piece's own least-squares
// line plus a price for each piece is smallest (after Bellman 1961 and Jackson et al. 2005). Pieces need not
// meet.
#pragma once

#include <cstddef>
#include <vector>

#include "core/phases/group_course.h"

namespace soakwright {

struct StraightPiece {
  std::size_t first = 0;  ///< point of the course
  std::size_t last = 0;   ///< one past the end
  double start_c = 0.0;   ///< of the line at the first point
  double end_c = 0.0;     ///< of the line at the last point
};

/// What is too small or too short to be a phase, from the record's own size and noise.
struct PhaseScale {
  double shortest_s = 0.0;   ///< a shorter piece is no phase
  double smallest_k = 0.0;   ///< a smaller change of level is no phase
  double level_slope = 0.0;  ///< K/s; a slower change is level
  static PhaseScale of(const GroupCourse& course, double duration_s, double interval_s);
};

std::vector<StraightPiece> straight_pieces(const GroupCourse& course, const PhaseScale& scale);

/// Least-squares line of points [first, last), as a piece.
StraightPiece piece_of(const GroupCourse& course, std::size_t first, std::size_t last);

}  // namespace soakwright
