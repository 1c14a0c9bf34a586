// SPDX-License-Identifier: GPL-3.0-or-later
// Real processes that look like a fault of one thermocouple.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "tests/core/phases/dice.h"
#include "tests/core/phases/run.h"

namespace soakwright::made {

/// A zone that stays cooler, by up to an eighth.
inline void stay_cooler(Dice& dice, const Run& run, std::vector<double>& clean) {
  const double cooler = dice.between(0.05, 0.12);
  for (double& celsius : clean) celsius -= cooler * (celsius - run.ambient_c);
}

/// Behind by up to 50 K while heating, and there again in the hold and in cooling.
inline void fall_behind(Dice& dice, const Run& run, const std::vector<double>& work_c,
                        std::vector<double>& clean) {
  const std::vector<double>& t = run.record.times_s;
  const double behind = dice.between(20.0, 50.0);
  const double settle = 0.03 * run.duration_s;
  double pace = 0.0;
  for (const Part& part : run.parts) pace = std::max(pace, (part.to_c - part.from_c) / part.seconds);
  double felt = 0.0;
  for (std::size_t r = 1; r < t.size(); ++r) {
    const double dt = t[r] - t[r - 1];
    const double share = std::clamp((work_c[r] - work_c[r - 1]) / dt / pace, 0.0, 1.0);
    felt += (share - felt) * (1.0 - std::exp(-dt / settle));
    clean[r] -= behind * felt;
  }
}

/// Weld runs that pass it in the preheat.
inline void weld_beside(Dice& dice, const Run& run, std::vector<double>& clean) {
  const std::vector<double>& t = run.record.times_s;
  double from = 0.0;
  for (const Part& part : run.parts) {
    const bool preheat = part.kind == Phase::Kind::hold && part.from_c < 260.0;
    const int passes = preheat && run.duration_s > 7200.0 ? static_cast<int>(part.seconds / 900.0) : 0;
    for (int pass = 0; pass < std::min(passes, 12); ++pass) {
      const double at = from + dice.between(0.05, 0.9) * part.seconds;
      const double height = dice.between(30.0, 150.0);
      const double fade = dice.between(60.0, 240.0);
      for (std::size_t r = 0; r < t.size(); ++r)
        if (t[r] >= at) clean[r] += height * std::exp(-(t[r] - at) / fade);
    }
    from += part.seconds;
  }
}

/// What real work does to one channel and is no fault: adds it to the channel's noise-free trace.
inline void add_lookalike(Dice& dice, const Run& run, const std::vector<double>& work_c,
                          std::vector<double>& clean) {
  const double kind = dice.between(0.0, 3.0);
  if (kind < 1.0)
    stay_cooler(dice, run, clean);
  else if (kind < 2.0)
    fall_behind(dice, run, work_c, clean);
  else
    weld_beside(dice, run, clean);
}

}  // namespace soakwright::made
