// SPDX-License-Identifier: GPL-3.0-or-later
// From straight pieces to runs that rise, stay level or fall: what is only noise, an overshoot, a short dip,
// a knee or a gap becomes part of the run that it disturbs.
//
// In: the pieces of the course. Out: runs that alternate in kind, in time order, covering all points. Where
// one run ends exactly is not decided here (phase_corners.h).
#pragma once

#include <cstddef>
#include <vector>

#include "core/phases/straight_pieces.h"

namespace soakwright {

struct Run {
  enum class Kind { rise, level, fall };
  Kind kind = Kind::level;
  std::size_t first = 0;  ///< point of the course
  std::size_t last = 0;   ///< one past the end; equal to first where the course jumps between two points
  double start_c = 0.0;
  double end_c = 0.0;
  [[nodiscard]] double change_k() const { return end_c - start_c; }
  [[nodiscard]] bool ramp() const { return kind != Kind::level; }
};

std::vector<Run> phase_runs(const GroupCourse& course, const PhaseScale& scale,
                            const std::vector<StraightPiece>& pieces);

}  // namespace soakwright
