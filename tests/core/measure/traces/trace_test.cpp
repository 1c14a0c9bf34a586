// SPDX-License-Identifier: GPL-3.0-or-later
// Where a thermocouple's temperature is known, from its own readings.
#include "core/measure/traces/trace.h"

#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/measure/traces/trace_words.h"

using namespace soakwright;

TEST_CASE(
    "Between readings no further apart than the interpolate_max a temperature is the line through them") {
  // 100 at 0 s, 160 at 60 s, 220 at 120 s; then 180 s without a row; 400 at 300 s.
  const Traced made(MadeRecord({0, 60, 120, 300}).column("TC1", {100, 160, 220, 400}), 120);
  const Trace& tc1 = made.trace("TC1");
  struct Case {
    double t;
    const char* expected;
  };
  const Case cases[] = {{-1, "unknown"},                // before the first reading
                        {0, "100"},       {15, "115"},  // a degree a second
                        {60, "160"},      {90, "190"},  {120, "220"}, {121, "unknown"},  // the hole
                        {299, "unknown"}, {300, "400"},  // known at its instant
                        {301, "unknown"}};               // after the last reading
  for (const Case& c : cases) {
    CAPTURE(c.t);
    CHECK(told(tc1, c.t) == c.expected);
  }
  CHECK(known_times(tc1) == "0..120 300..300");
  CHECK(say(unknown_spans(tc1, 0, 300)) == "120..300");
  CHECK(say(unknown_spans(tc1, -60, 400)) == "-60..0 120..300 300..400");
}

TEST_CASE("A hole as long as the interpolate_max is joined, one that is longer is not") {
  const MadeRecord made = MadeRecord({0, 60, 240, 300}).column("TC1", {100, 100, 280, 280});
  CHECK(told(Traced(made, 180).trace("TC1"), 150) == "190");
  CHECK(told(Traced(made, 179).trace("TC1"), 150) == "unknown");
}

TEST_CASE("An empty cell is interpolated like a missing row") {
  const MadeRecord made = MadeRecord::every(60, 5)
                              .column("TC1", {100, kNoReading, 220, kNoReading, kNoReading})
                              .column("TC2", {100, 100, 100, 100, 100});
  const Traced joined(made, 120);
  CHECK(told(joined.trace("TC1"), 60) == "160");  // half way from 100 at 0 s to 220 at 120 s
  CHECK(say(unknown_spans(joined.trace("TC1"), 0, 240)) == "120..240");
  CHECK(say(unknown_spans(Traced(made, 60).trace("TC1"), 0, 240)) == "0..120 120..240");
}

TEST_CASE("Readings that are no measurement leave their time unknown, and no line crosses it") {
  const MadeRecord made = MadeRecord::every(60, 6)
                              .column("TC1", {100, 160, 220, 280, 340, 400})
                              .column("TC2", {100, 100, 100, 100, 100, 100});
  struct Case {
    const char* what;
    std::vector<UnmeasuredTime> unmeasured;
    const char* known;
    const char* readings;
  };
  const Case cases[] = {{"two readings, joined otherwise", {{0, 120, 180}}, "0..60 240..300", "0 60 240 300"},
                        {"one reading alone", {{0, 180, 180}}, "0..120 240..300", "0 60 120 240 300"},
                        {"between two readings", {{0, 130, 170}}, "0..120 180..300", "0 60 120 180 240 300"},
                        {"up to a thousandth of a second short of a reading",
                         {{0, 120, 179.9995}},
                         "0..60 240..300",
                         "0 60 240 300"},
                        {"in any order", {{0, 300, 300}, {0, 0, 0}}, "60..240", "60 120 180 240"},
                        {"all of them", {{0, 0, 300}}, "", ""}};
  for (const Case& c : cases) {
    CAPTURE(c.what);
    const Traced traced(made, 600, c.unmeasured);
    CHECK(known_times(traced.trace("TC1")) == c.known);
    CHECK(counted_readings(traced.trace("TC1")) == c.readings);
    CHECK(known_times(traced.trace("TC2")) == "0..300");
    CHECK(traced.trace("TC1").exclusions.empty());
  }
  CHECK(say(unknown_spans(Traced(made, 600, cases[0].unmeasured).trace("TC1"), 0, 300)) == "60..240");
}

TEST_CASE("A channel without any reading is unknown throughout") {
  const Traced made(MadeRecord::every(60, 2).column("TC1", {kNoReading, kNoReading}));
  CHECK(made.trace("TC1").pieces.empty());
  CHECK(say(unknown_spans(made.trace("TC1"), 0, 60)) == "0..60");
}

TEST_CASE("A clock fault breaks every line across it, however short the step") {
  const Traced made(MadeRecord::every(60, 4).column("TC1", {100, 160, 220, 280}).broken_after(1), 600);
  CHECK(known_times(made.trace("TC1")) == "0..60 120..180");
  CHECK(told(made.trace("TC1"), 90) == "unknown");
}

TEST_CASE("A clock fault between two readings counts where the rows between them are empty") {
  const Traced made(
      MadeRecord::every(60, 4).column("TC1", {100, kNoReading, kNoReading, 280}).broken_after(1), 600);
  CHECK(known_times(made.trace("TC1")) == "0..0 180..180");
}

TEST_CASE("Times outside the evaluated rows are not read and no line leads there") {
  const Traced made(MadeRecord::every(60, 6).column("TC1", {1, 2, 3, 4, 5, 6}).time_range(2, 5));
  CHECK(known_times(made.trace("TC1")) == "120..240");
  CHECK(counted_readings(made.trace("TC1")) == "120 180 240");
}

TEST_CASE("Air, set point and switched-off channels have no trace") {
  const Traced made(MadeRecord::every(60, 2)
                        .column("TC1", {1, 2})
                        .column("Air", {1, 2})
                        .column("Set", {1, 2})
                        .column("TC9", {1, 2})
                        .column("Rim", {1, 2})
                        .role("TC1", ThermocoupleRole::control)
                        .role("Air", ThermocoupleRole::air)
                        .role("Set", ThermocoupleRole::set_point)
                        .role("TC9", ThermocoupleRole::off)
                        .at_edge("Rim"));
  REQUIRE(made.set.traces.size() == 2);
  CHECK(made.set.traces[0].name == "TC1");
  CHECK(made.set.traces[1].name == "Rim");
  CHECK(made.group == std::vector<std::size_t>{0});  // the edge is not evaluated as the soak zone is
}
