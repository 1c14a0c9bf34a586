// SPDX-License-Identifier: GPL-3.0-or-later
// Ramps faster than their limit, at every interval of a log: none of them may be met. Invented runs in which
// heating or cooling is too fast by 7 % to 300 times; the other direction keeps to its limit.
#include <cmath>
#include <cstdio>
#include <random>

#include <catch2/catch.hpp>

#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;

namespace {

const char* const kLean =
    "[[stage]]\nkind = \"heat\"\nabove = 300\nrate_max = 150\n"
    "[[stage]]\nkind = \"hold\"\nlow = 590\nhigh = 620\ntime_min = \"95 min\"\n"
    "[[stage]]\nkind = \"cool\"\nabove = 300\nrate_max = 150\n";

enum class Fast { heating, cooling };

/// 20 °C, up to 605 °C, two hours held, down to 100 °C: four channels, read to 0.1 °C with a scatter of 0.15
/// K, a row every `interval_s`. `late_s` is how long after a row the first ramp begins.
MadeRecord run(double heating, double cooling, double interval_s, double late_s, std::mt19937& chance) {
  const double up_min = 585.0 / heating * 60.0;
  const double down_min = 505.0 / cooling * 60.0;
  const double start_min = 60.0 + late_s / 60.0;
  const Knots course{{start_min, 20},
                     {start_min + up_min, 605},
                     {start_min + up_min + 120, 605},
                     {start_min + up_min + 120 + down_min, 100}};
  const double rows = (course.back().first + 120.0) * 60.0 / interval_s;
  std::normal_distribution<double> scatter(0.0, 0.15);
  MadeRecord made = MadeRecord::every(interval_s, static_cast<std::size_t>(rows) + 1);
  for (int channel = 1; channel <= 4; ++channel) {
    std::vector<double> values;
    for (std::size_t row = 0; row <= static_cast<std::size_t>(rows); ++row)
      values.push_back(on_course(course, interval_s * static_cast<double>(row)) + scatter(chance));
    made.column("TC" + std::to_string(channel), std::move(values));
  }
  return made;
}

struct Shares {
  int met = 0, inconclusive = 0, not_met = 0;
};

/// `ramps` rates from 160 to 50,000 °C/h, evenly on a logarithmic scale, in both directions.
Shares verdicts_of(int ramps, double interval_s) {
  std::mt19937 chance(static_cast<unsigned>(interval_s) + 1U);
  std::uniform_real_distribution<double> share(0.0, 1.0);
  Shares all;
  for (int i = 0; i < ramps; ++i) {
    const double fast = 160.0 * std::pow(50'000.0 / 160.0, static_cast<double>(i) / (ramps - 1));
    for (const Fast which : {Fast::heating, Fast::cooling}) {
      const bool heats = which == Fast::heating;
      const MadeRecord made =
          run(heats ? fast : 100.0, heats ? 100.0 : fast, interval_s, interval_s * share(chance), chance);
      const Evaluated evaluated(made, kLean);
      const Verdict verdict = evaluated[heats ? "stage-1.heating-rate" : "stage-3.cooling-rate"].verdict;
      INFO((heats ? "heating " : "cooling ")
           << fast << " C/h, a row every " << interval_s
           << " s: " << evaluated.text(heats ? "stage-1.heating-rate" : "stage-3.cooling-rate"));
      CHECK(verdict != Verdict::met);
      ++(verdict == Verdict::met            ? all.met
         : verdict == Verdict::inconclusive ? all.inconclusive
                                            : all.not_met);
    }
  }
  return all;
}

const double kIntervals[] = {1, 5, 10, 30, 60, 90, 120, 300, 600, 900, 1200, 1800};

}  // namespace

TEST_CASE("No ramp faster than its limit is met, whatever the interval of the log") {
  for (const double interval_s : kIntervals) {
    // The first ramp is 160 °C/h: 7 % above the limit.
    const Shares some = verdicts_of(interval_s < 10 ? 5 : 9, interval_s);
    CHECK(some.met == 0);
    // Up to a row a minute most of them are shown plainly.
    if (interval_s <= 60) CHECK(some.not_met > some.inconclusive);
  }
}

TEST_CASE("No ramp faster than its limit is met: 45 rates at each interval", "[.][long]") {
  int met = 0;
  for (const double interval_s : kIntervals) {
    const Shares all = verdicts_of(45, interval_s);
    std::printf("a row every %4.0f s: met %d, inconclusive %2d, not met %2d of 90\n", interval_s, all.met,
                all.inconclusive, all.not_met);
    met += all.met;
  }
  CHECK(met == 0);
}
