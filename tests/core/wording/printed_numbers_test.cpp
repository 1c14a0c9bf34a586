// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/printed_numbers.h"

#include <catch2/catch.hpp>

#include "tests/core/report/made_up_run.h"

using namespace soakwright;

namespace {

Requirement rate_requirement(double limit, double measured) {
  Requirement requirement;
  requirement.kind = RequirementKind::heating_rate;
  requirement.limit = limit;
  requirement.measured = measured;
  requirement.margin = limit - measured;
  return requirement;
}

}  // namespace

TEST_CASE("a printed value never contradicts its verdict") {
  const auto record = made_up_record({});
  const PrintedNumbers say{TemperatureUnit::celsius, *record};
  SECTION("the usual case has one decimal") {
    const MeasuredText text = say.measured(rate_requirement(144.73684, 139.21));
    CHECK(text.limit == "≤ 144.74 °C/h");
    CHECK(text.measured == "139.2 °C/h");
    CHECK(text.margin == "5.5 °C/h");
  }
  SECTION("close to the limit there are more, as many as tell them apart") {
    const MeasuredText text = say.measured(rate_requirement(144.7368, 144.7401));
    CHECK(text.limit == "≤ 144.737 °C/h");
    CHECK(text.measured == "144.740 °C/h");
    CHECK(text.margin == "−0.003 °C/h");
  }
  SECTION("at the limit there is nothing to tell apart") {
    const MeasuredText text = say.measured(rate_requirement(200.0, 200.0));
    CHECK(text.measured == "200.0 °C/h");
    CHECK(text.margin == "0.0 °C/h");
  }
  SECTION("a hold that misses by a fraction of a second says so") {
    Requirement hold;
    hold.kind = RequirementKind::hold_time;
    hold.limit = 5700.0;
    hold.measured = 5699.7;
    hold.margin = -0.3;
    const MeasuredText text = say.measured(hold);
    CHECK(text.limit == "≥ 1 h 35 min");
    CHECK(text.measured == "1 h 34 min 59.7 s");
    CHECK(text.margin == "−0.3 s");
  }
}

TEST_CASE("a reading has the log's digits") {
  const auto record = made_up_record({});
  const PrintedNumbers say{TemperatureUnit::celsius, *record};
  CHECK(say.temperature(611.6) == "611.6 °C");
  CHECK(say.temperature(611.643) == "611.6 °C");
}

TEST_CASE("in Fahrenheit a point has the offset, a difference and a rate do not") {
  // NIST SP 811, appendix B.8: t/F = 1.8 t/C + 32; an interval of 1 C is 1.8 F.
  const auto record = made_up_record({});
  const PrintedNumbers say{TemperatureUnit::fahrenheit, *record};
  CHECK(say.limit(Temperature::of_celsius(590.0)) == "1094 °F");
  CHECK(say.limit(TemperatureDifference::of_kelvin(30.0)) == "54 °F");
  CHECK(say.limit(HeatingRate::of_celsius_per_hour(100.0)) == "180 °F/h");
  CHECK(say.range(Temperature::of_celsius(590.0), Temperature::of_celsius(620.0)) == "1094 to 1148 °F");
  Requirement temperature_max;
  temperature_max.limit = 650.0;
  temperature_max.measured = 605.0;
  temperature_max.margin = 45.0;
  CHECK(say.measured(temperature_max).measured == "1121.0 °F");
  CHECK(say.measured(temperature_max).margin == "81.0 °F");
  Requirement spread;
  spread.kind = RequirementKind::spread;
  spread.limit = 30.0;
  spread.measured = 605.0;
  CHECK(say.measured(spread).measured == "1089.0 °F");
  CHECK(say.measured(spread).limit == "≤ 54 °F");
}

TEST_CASE("moments are local time where the log has a clock and elapsed time where it has none") {
  const auto clocked = made_up_record({});
  const PrintedNumbers local{TemperatureUnit::celsius, *clocked};
  CHECK(local.moment(3'661.0) == "2031-04-02 07:01:01");
  CHECK(local.moment(3'660.9996) == "2031-04-02 07:01:01");
  CHECK(local.span(0.0, 60.0) == "2031-04-02 06:00:00 to 06:01:00");
  CHECK(local.span(64'799.0, 64'801.0) == "2031-04-02 23:59:59 to 2031-04-03 00:00:01");
  MadeUpRun run;
  run.clock = false;
  const auto bare = made_up_record(run);
  const PrintedNumbers elapsed{TemperatureUnit::celsius, *bare};
  CHECK(elapsed.moment(93'784.0) == "26:03:04");
  CHECK(elapsed.span(0.0, 60.0) == "0:00:00 to 0:01:00");
}

TEST_CASE("names are listed as a person says them") {
  CHECK(listing({"TC1"}) == "TC1");
  CHECK(listing({"TC1", "TC2", "TC3"}) == "TC1, TC2 and TC3");
}

TEST_CASE("a narrow column leaves out the day that every moment shares") {
  const auto on_one_day = made_up_record({});
  const PrintedNumbers say{TemperatureUnit::celsius, *on_one_day};
  REQUIRE(on_one_day->local_time(on_one_day->end_s())->date() == on_one_day->local_time(0)->date());
  CHECK(say.brief_when(3'661.0, {}, {}) == "07:01:01");
  CHECK(say.brief_when({}, 3'600.0, 3'661.0) == "07:00:00 to 07:01:01");
  auto over_midnight = std::make_shared<Record>(*on_one_day);
  over_midnight->clock = RecorderClock::dated(LocalTime::of({2031, 4, 2}, 22, 0, 0).value());
  const PrintedNumbers later{TemperatureUnit::celsius, *over_midnight};
  CHECK(later.brief_when(3'661.0, {}, {}) == "2 Apr 23:01:01");
  CHECK(later.brief_when({}, 3'600.0, 3'661.0) == "2 Apr 23:00:00 to 23:01:01");
  CHECK(later.brief_when({}, 3'600.0, 7'200.0) == "2 Apr 23:00:00 to 3 Apr 00:00:00");
  CHECK(later.brief_when({}, {}, {}).empty());
}
