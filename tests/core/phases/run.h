// SPDX-License-Identifier: GPL-3.0-or-later
// A made-up run: its programme, what the recorder showed of it, and what is true.
#pragma once

#include <cstdint>
#include <vector>

#include "core/phases/phase.h"
#include "core/record/record.h"

namespace soakwright::made {

/// One straight part of the programme.
struct Part {
  Phase::Kind kind = Phase::Kind::idle;
  double seconds = 0.0;
  double from_c = 0.0;
  double to_c = 0.0;
};

/// A corner of the programme, and the time within which the noise-free course bends: from the programme's own
/// corner to where the course has settled at a level, or has left it by 1 K; at least the work's own lag,
/// after which the lines of the course meet.
struct TrueCorner {
  double from_s = 0.0;
  double to_s = 0.0;
  bool sharp = true;  ///< false where natural cooling ebbs away and no corner can be named
};

struct Run {
  std::uint64_t seed = 0;
  Record record;
  std::vector<Part> parts;
  std::vector<TrueCorner> corners;           ///< between the parts
  std::vector<double> course_c;              ///< noise-free median of the channels, at each row
  std::vector<std::vector<double>> true_c;   ///< noise-free, by channel and row
  std::vector<std::vector<double>> shown_c;  ///< with noise, before the recorder's digits, by channel and row
  std::vector<std::vector<char>> missing;
  TemperatureUnit unit = TemperatureUnit::celsius;
  int places = 1;
  double ambient_c = 20.0;
  double noise_k = 0.0;
  bool natural_cooling = false;
  double duration_s = 0.0;
  double lag_s = 0.0;  ///< by which the course follows the programme on a ramp
};

}  // namespace soakwright::made
