// SPDX-License-Identifier: GPL-3.0-or-later
// The required cycle as lines: what keeps a limit stays on the permitted side of its line, and what breaks it
// crosses. Worked by hand from the made-up run: 38 mm give 5500 / 38 = 144.7 °C/h up and 180.9 °C/h down.
#include "core/report/required_cycle.h"

#include <algorithm>
#include <limits>

#include <catch2/catch.hpp>

#include "core/report/record_overlay.h"
#include "tests/core/report/made_up_run.h"

using namespace soakwright;

namespace {

/// How far the hottest reading comes above the line, the coldest below it where the line falls; K.
double furthest_over(const Record& record, const RequiredRamp& ramp) {
  double furthest = -std::numeric_limits<double>::infinity();
  const double slope = (ramp.to_c - ramp.from_c) / (ramp.to_s - ramp.from_s);
  const double sense = slope > 0.0 ? 1.0 : -1.0;
  for (std::size_t row = 0; row < record.times_s.size(); ++row) {
    const double at_s = record.times_s[row];
    if (at_s < ramp.from_s || at_s > ramp.to_s) continue;
    for (const Channel& channel : record.channels)
      if (const auto celsius = channel.readings.celsius(row))
        furthest = std::max(furthest, sense * (*celsius - ramp.from_c - slope * (at_s - ramp.from_s)));
  }
  return furthest;
}

constexpr double kNoise_k = 0.3;

}  // namespace

TEST_CASE("permitted ramps have the limit's slope and what keeps it does not cross them") {
  const Analysis analysis = made_up_analysis();
  const RequiredCycle cycle = required_cycle(analysis);
  REQUIRE(cycle.ramps.size() == 2);
  const RequiredRamp& heat = cycle.ramps[0];
  CHECK((heat.to_c - heat.from_c) * 3600.0 / (heat.to_s - heat.from_s) == Approx(5500.0 / 38.0));
  CHECK(heat.to_c == 590.0);
  CHECK(heat.from_c >= 300.0);
  CHECK(heat.from_c < 305.0);
  CHECK(furthest_over(*analysis.record, heat) < kNoise_k);
  const RequiredRamp& cool = cycle.ramps[1];
  CHECK((cool.from_c - cool.to_c) * 3600.0 / (cool.to_s - cool.from_s) == Approx(6875.0 / 38.0));
  CHECK(cool.to_c == 300.0);
  CHECK(cool.from_c > 580.0);
  CHECK(cool.from_s >= *analysis.verdicts->stages[1].end_s);
  CHECK(furthest_over(*analysis.record, cool) < kNoise_k);
  const auto& requirements = analysis.verdicts->requirements;
  CHECK(requirements[heat.requirement].id == "stage-1.heating-rate");
  CHECK(requirements[cool.requirement].id == "stage-3.cooling-rate");
}

// 20 min at 1.6 times the rate gain 26 K; 130 °C/h instead of 144.7 leave less than 15 K until then.
TEST_CASE("a ramp that is too steep for 20 min crosses its line") {
  MadeUpRun run;
  run.excursion = true;
  const Analysis analysis = made_up_analysis(run);
  const RequiredCycle cycle = required_cycle(analysis);
  REQUIRE(!cycle.ramps.empty());
  CHECK(furthest_over(*analysis.record, cycle.ramps[0]) > 5.0);
}

TEST_CASE("the required hold begins with the hold's clock and lasts as long as is required") {
  const Analysis analysis = made_up_analysis();
  const RequiredCycle cycle = required_cycle(analysis);
  REQUIRE(cycle.holds.size() == 1);
  const RequiredHold& hold = cycle.holds[0];
  CHECK(hold.from_s == analysis.verdicts->stages[1].continuous->first);
  CHECK(hold.to_s - hold.from_s == Approx(95.0 * 60.0));
  CHECK(hold.low_c == 590.0);
  CHECK(hold.high_c == 620.0);
  CHECK(analysis.verdicts->requirements[hold.requirement].id == "stage-2.hold-time");
}

TEST_CASE("a record without a procedure has no required cycle") {
  Analysis analysis = made_up_analysis();
  analysis.verdicts = nullptr;
  CHECK(required_cycle(analysis).ramps.empty());
  CHECK(required_cycle(analysis).holds.empty());
}

// At 130 °C/h 590 °C are reached 570 / 130 h after the start, at 100 °C/h after 570 / 100 h: 4735 s apart.
TEST_CASE("two records begin their required hold together") {
  MadeUpRun slow;
  slow.rate_c_per_h = 100.0;
  const Analysis shown = made_up_analysis();
  const Analysis other = made_up_analysis(slow);
  const RecordOffset offset = offset_onto(shown, other);
  CHECK(offset.by == RecordOffset::Aligned::required_hold);
  CHECK(offset.seconds == Approx(570.0 / 130.0 * 3600.0 - 570.0 / 100.0 * 3600.0).margin(60.0));
  CHECK(other.verdicts->stages[1].continuous->first + offset.seconds ==
        Approx(shown.verdicts->stages[1].continuous->first));
  CHECK(offset_onto(other, shown).seconds == Approx(-offset.seconds));
}

TEST_CASE("without a procedure the recorded holds fall together, and without a hold the records' starts") {
  MadeUpRun slow;
  slow.rate_c_per_h = 100.0;
  Analysis shown = made_up_analysis();
  Analysis other = made_up_analysis(slow);
  other.verdicts = nullptr;
  const RecordOffset offset = offset_onto(shown, other);
  CHECK(offset.by == RecordOffset::Aligned::recorded_hold);
  CHECK(offset.seconds == Approx(585.0 / 130.0 * 3600.0 - 585.0 / 100.0 * 3600.0));
  other.course = std::make_shared<const Course>();
  CHECK(offset_onto(shown, other).by == RecordOffset::Aligned::record_start);
  CHECK(offset_onto(shown, other).seconds == 0.0);
}
