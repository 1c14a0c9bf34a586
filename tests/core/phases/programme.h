// SPDX-License-Identifier: GPL-3.0-or-later
// Programmes drawn at random.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "tests/core/phases/dice.h"
#include "tests/core/phases/run.h"

namespace soakwright::made {

/// A programme of `duration_s`: cold or hot start, one or two holds, perhaps two cycles.
inline std::vector<Part> random_programme(Dice& dice, double duration_s, double ambient_c, bool natural) {
  using Kind = Phase::Kind;
  std::vector<Part> parts;
  double now_c = ambient_c;
  const double top_c = dice.between(350.0, 720.0);
  const auto level = [&](Kind kind, double share) {
    parts.push_back({kind, dice.between(0.6, 1.4) * share * duration_s, now_c, now_c});
  };
  const auto ramp = [&](double to_c, double share) {
    const double seconds = std::min(dice.between(0.6, 1.4) * share * duration_s,
                                    std::abs(to_c - now_c) * 3600.0 / 20.0);  // 20 K/h is the slowest in use
    parts.push_back({to_c > now_c ? Kind::heat : Kind::cool, seconds, now_c, to_c});
    now_c = to_c;
  };
  const bool starts_hot = dice.chance(0.15);
  if (starts_hot) {
    now_c = dice.between(100.0, 300.0);
    level(Kind::hold, 0.12);
  } else if (dice.chance(0.7)) {
    level(Kind::idle, 0.08);
  }
  const int cycles = !natural && dice.chance(0.3) ? 2 : 1;  // left alone, the work would not be cold in time
  for (int cycle = 0; cycle < cycles; ++cycle) {
    if (dice.chance(0.35) && now_c < 90.0) {  // preheat on the way
      ramp(dice.between(110.0, 250.0), 0.1);
      level(Kind::hold, 0.12);
    }
    ramp(top_c - 20.0 * cycle, 0.25);
    level(Kind::hold, 0.2);
    if (!natural && dice.chance(0.2)) {  // a second, lower hold
      ramp(top_c - dice.between(80.0, 200.0), 0.08);
      level(Kind::hold, 0.12);
    }
    const bool last = cycle + 1 == cycles;
    if (last && dice.chance(0.2)) break;  // the record ends in the hold
    ramp(ambient_c + dice.between(5.0, 25.0), 0.3);
    if (!last || (!natural && dice.chance(0.6))) level(Kind::idle, 0.08);
  }
  double total = 0.0;
  for (const Part& part : parts) total += part.seconds;
  if (total > duration_s)
    for (Part& part : parts) part.seconds *= duration_s / total;
  total = std::min(total, duration_s);
  for (Part& part : parts)  // a part of less than a twenty-fifth of the run is asking too much
    if (part.from_c == part.to_c) part.seconds = std::max(part.seconds, 0.05 * total);
  return parts;
}

}  // namespace soakwright::made
