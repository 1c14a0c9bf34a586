// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/traces/trace.h"

#include <catch2/catch.hpp>

#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

/// The temperature at a time as text, "unknown" where there is none.
std::string told(const Trace& trace, double t) {
  const auto celsius = temperature_at(trace, t);
  return celsius ? say(*celsius) : "unknown";
}

std::string known_times(const Trace& trace) {
  std::vector<Span> times;
  for (const Piece& piece : trace.pieces) times.emplace_back(piece.from, piece.to);
  return say(times);
}

/// The times of the readings that count, piece by piece.
std::string counted_readings(const Trace& trace) {
  std::vector<double> times;
  for (const Piece& piece : trace.pieces)
    for (std::size_t i = piece.first; i < piece.end; ++i) times.push_back(trace.sources[piece.source].t[i]);
  return say(times);
}

}  // namespace

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

TEST_CASE("A spare takes over where its channel's readings are no measurement") {
  const MadeRecord made = MadeRecord::every(60, 11)
                              .course("TC1", {{0, 600}, {10, 600}})
                              .course("TC9", {{0, 605}, {10, 605}})
                              .spare("TC9", "TC1");
  const Traced traced(made, 120, {{0, 240, 600}});
  REQUIRE(traced.set.take_overs.size() == 1);
  CHECK(traced.set.take_overs.front().at_s == 180);
  CHECK(known_times(traced.trace("TC1")) == "0..180 180..600");
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

TEST_CASE(
    "Excluded time reaches out to the readings beside it, which stay, and nothing is joined across it") {
  // A degree a minute from 0.
  const MadeRecord made = MadeRecord::every(60, 6).column("TC1", {0, 1, 2, 3, 4, 5});
  struct Case {
    const char* what;
    Span excluded;
    const char* exclusions;
    const char* known;
    const char* readings;
  };
  const Case cases[] = {
      {"from between two rows to between two rows", {90, 210}, "60..240", "0..60 240..300", "0 60 240 300"},
      {"readings at its very ends are excluded", {60, 180}, "0..240", "0..0 240..300", "0 240 300"},
      {"one reading", {120, 120}, "60..180", "0..60 180..300", "0 60 180 240 300"},
      {"no reading at all", {130, 170}, "120..180", "0..120 180..300", "0 60 120 180 240 300"},
      {"within a thousandth of a second of a reading",
       {120.0009, 170},
       "60..180",
       "0..60 180..300",
       "0 60 180 240 300"},
      {"to the record's end", {200, 300}, "180..300", "0..180", "0 60 120 180"},
      {"from the record's start", {0, 100}, "0..120", "120..300", "120 180 240 300"},
      {"throughout", {0, 300}, "0..300", "", ""}};
  for (const Case& c : cases) {
    CAPTURE(c.what);
    const Traced excluded(MadeRecord(made).exclusion("TC1", c.excluded.first, c.excluded.second), 600);
    const Trace& tc1 = excluded.trace("TC1");
    CHECK(say(tc1.exclusions) == c.exclusions);
    CHECK(known_times(tc1) == c.known);
    CHECK(counted_readings(tc1) == c.readings);
    CHECK(say(unknown_spans(tc1, 0, 300)).empty());
  }
  CHECK(told(Traced(MadeRecord(made).exclusion("TC1", 90, 210)).trace("TC1"), 75) == "unknown");
}

TEST_CASE("Excluded time is as typed on a side without a reading") {
  const MadeRecord made =
      MadeRecord::every(60, 6).column("TC1", {kNoReading, kNoReading, 2, 3, kNoReading, kNoReading});
  const Traced before(MadeRecord(made).exclusion("TC1", 50, 100));
  CHECK(say(before.trace("TC1").exclusions) == "50..120");
  CHECK(say(unknown_spans(before.trace("TC1"), 0, 300)) == "0..50 180..300");
  CHECK_FALSE(before.trace("TC1").excluded_from_start);
  const Traced after(MadeRecord(made).exclusion("TC1", 200, 250));
  CHECK(say(after.trace("TC1").exclusions) == "180..250");
  CHECK(say(unknown_spans(after.trace("TC1"), 0, 300)) == "0..120 250..300");
  CHECK_FALSE(after.trace("TC1").excluded_to_end);
}

TEST_CASE("Two excluded times are one where no reading is left between them") {
  const MadeRecord made = MadeRecord::every(60, 6).column("TC1", {0, 1, 2, 3, 4, 5});
  CHECK(say(Traced(MadeRecord(made).exclusion("TC1", 150, 210).exclusion("TC1", 90, 160))
                .trace("TC1")
                .exclusions) == "60..240");
  CHECK(say(Traced(MadeRecord(made).exclusion("TC1", 130, 140).exclusion("TC1", 150, 160))
                .trace("TC1")
                .exclusions) == "120..180");
  // The reading at 120 s stays, with no line on either side.
  const Traced apart(MadeRecord(made).exclusion("TC1", 60, 60).exclusion("TC1", 180, 180));
  CHECK(say(apart.trace("TC1").exclusions) == "0..120 120..240");
  CHECK(known_times(apart.trace("TC1")) == "0..0 120..120 240..300");
}

TEST_CASE("Time excluded from the record's start or to its end is told apart") {
  const MadeRecord made = MadeRecord::every(60, 6).column("TC1", {0, 1, 2, 3, 4, 5});
  const Traced start(MadeRecord(made).exclusion("TC1", 0, 60));
  CHECK(start.trace("TC1").excluded_from_start);
  CHECK_FALSE(start.trace("TC1").excluded_to_end);
  const Traced end(MadeRecord(made).exclusion("TC1", 250, 900));  // cut at the record's end
  CHECK(end.trace("TC1").excluded_to_end);
  CHECK(say(end.trace("TC1").exclusions) == "240..300");
  CHECK_FALSE(Traced(MadeRecord(made).exclusion("TC1", 250, 299)).trace("TC1").excluded_to_end);
}

TEST_CASE("An excluded time is that of one channel only") {
  const Traced exclusion(MadeRecord::every(60, 6)
                             .column("TC1", {0, 1, 2, 3, 4, 5})
                             .column("TC2", {0, 1, 2, 3, 4, 5})
                             .exclusion("TC1", 90, 210));
  CHECK(known_times(exclusion.trace("TC2")) == "0..300");
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

// ---- spares ----

TEST_CASE("A spare takes over at the last instant at which its channel is known") {
  // TC1 has its last reading at 120 s, 220; TC9 reads 6 more than TC1 did.
  const Traced made(MadeRecord::every(60, 6)
                        .column("TC1", {100, 160, 220, kNoReading, kNoReading, kNoReading})
                        .column("TC9", {106, 166, 226, 286, 346, 406})
                        .spare("TC9", "TC1"));
  const Trace& tc1 = made.trace("TC1");
  REQUIRE(made.set.take_overs.size() == 1);
  CHECK(made.set.take_overs[0].at_s == 120);
  CHECK(*made.set.take_overs[0].step_k == close_to(6.0));
  CHECK(tc1.take_over_s == 120.0);
  CHECK(told(tc1, 90) == "190");
  CHECK(told(tc1, 120) == "220");  // that instant is the main channel's
  CHECK(told(tc1, 150) == "256");  // then the spare's
  CHECK(told(tc1, 180) == "286");
  CHECK(counted_readings(tc1) == "0 60 120 180 240 300");
  CHECK(unknown_spans(tc1, 0, 300).empty());
}

TEST_CASE("The step of a take-over is not known where the spare is not known") {
  const Traced made(MadeRecord::every(60, 6)
                        .column("TC1", {100, 160, 220, kNoReading, kNoReading, kNoReading})
                        .column("TC9", {kNoReading, kNoReading, kNoReading, kNoReading, 346, 406})
                        .spare("TC9", "TC1"));
  REQUIRE(made.set.take_overs.size() == 1);
  CHECK_FALSE(made.set.take_overs[0].step_k);
  CHECK(say(unknown_spans(made.trace("TC1"), 0, 300)) == "120..240");
}

TEST_CASE("A spare serves from the start where its channel is never known") {
  const Traced made(MadeRecord::every(60, 4)
                        .column("TC1", {kNoReading, kNoReading, kNoReading, kNoReading})
                        .column("TC9", {106, 166, 226, 286})
                        .spare("TC9", "TC1"));
  REQUIRE(made.set.take_overs.size() == 1);
  CHECK(made.set.take_overs[0].at_s == 0);
  CHECK_FALSE(made.set.take_overs[0].step_k);
  CHECK(counted_readings(made.trace("TC1")) == "0 60 120 180");
  CHECK(told(made.trace("TC1"), 0) == "106");
}

TEST_CASE("Excluded time hands over at its start, the last reading before it, and never back") {
  // TC1 is excluded from 120 s to 180 s and reads well again after it.
  const Traced made(MadeRecord::every(60, 6)
                        .column("TC1", {100, 160, 220, 0, 340, 400})
                        .column("TC9", {106, 166, 226, 286, 346, 406})
                        .spare("TC9", "TC1")
                        .exclusion("TC1", 120, 180));
  const Trace& tc1 = made.trace("TC1");
  REQUIRE(made.set.take_overs.size() == 1);
  CHECK(made.set.take_overs[0].at_s == 60);
  CHECK(*made.set.take_overs[0].step_k == close_to(6.0));
  CHECK(told(tc1, 60) == "160");
  CHECK(told(tc1, 120) == "226");
  CHECK(told(tc1, 240) == "346");
  CHECK(told(tc1, 300) == "406");
  CHECK(tc1.exclusions.empty());
}

TEST_CASE("A spare takes over where its channel is unknown for longer than is interpolated") {
  // TC1 is unknown from 0 s to 240 s.
  const MadeRecord made = MadeRecord::every(60, 6)
                              .column("TC1", {100, kNoReading, kNoReading, kNoReading, 340, 400})
                              .column("TC9", {106, 166, 226, 286, 346, 406})
                              .spare("TC9", "TC1");
  const Traced longer(made, 239);
  REQUIRE(longer.set.take_overs.size() == 1);
  CHECK(longer.set.take_overs[0].at_s == 0);
  CHECK(counted_readings(longer.trace("TC1")) == "0 60 120 180 240 300");
  CHECK(told(longer.trace("TC1"), 240) == "346");  // for good, though TC1 is back
  CHECK(Traced(made, 240).set.take_overs.empty());
}

TEST_CASE("Of unknown and excluded time the earlier one hands over") {
  const MadeRecord made = MadeRecord::every(60, 11)
                              .course("TC1", {{0, 600}, {10, 600}})
                              .course("TC9", {{0, 605}, {10, 605}})
                              .spare("TC9", "TC1")
                              .missing("TC1", 360, 480);
  CHECK(Traced(MadeRecord(made).exclusion("TC1", 130, 170)).set.take_overs.front().at_s == 120);
  CHECK(Traced(MadeRecord(made).exclusion("TC1", 550, 570)).set.take_overs.front().at_s == 300);
}

TEST_CASE("A clock fault shorter than what is interpolated hands nothing over") {
  const Traced made(MadeRecord::every(60, 6)
                        .column("TC1", {100, 160, 220, 280, 340, 400})
                        .column("TC9", {106, 166, 226, 286, 346, 406})
                        .spare("TC9", "TC1")
                        .broken_after(2));
  CHECK(made.set.take_overs.empty());
}

TEST_CASE("Behind its take-over a spare's readings are its channel's alone") {
  const Traced made(MadeRecord::every(60, 6)
                        .column("TC1", {100, 160, 220, kNoReading, kNoReading, kNoReading})
                        .column("TC9", {106, 166, 226, 286, 346, 406})
                        .spare("TC9", "TC1"));
  CHECK(counted_readings(made.trace("TC9")) == "0 60 120");
}

TEST_CASE("Excluded time of the spare after the take-over stays excluded") {
  const Traced made(MadeRecord::every(60, 6)
                        .column("TC1", {100, 160, kNoReading, kNoReading, kNoReading, kNoReading})
                        .column("TC9", {106, 166, 226, 286, 346, 406})
                        .spare("TC9", "TC1")
                        .exclusion("TC9", 180, 190));
  const Trace& tc1 = made.trace("TC1");
  CHECK(say(tc1.exclusions) == "120..240");
  CHECK(counted_readings(tc1) == "0 60 120 240 300");
  CHECK(unknown_spans(tc1, 0, 300).empty());
}

TEST_CASE("No line joins a channel and its spare") {
  // The spare begins between rows: its own line from 60 s to 120 s counts only after the take-over at 60 s,
  // and jumps there from 160 to 500.
  const Traced made(MadeRecord::every(60, 5)
                        .column("TC1", {100, 160, kNoReading, kNoReading, kNoReading})
                        .column("TC9", {500, 500, 500, 500, 500})
                        .spare("TC9", "TC1"));
  const Trace& tc1 = made.trace("TC1");
  REQUIRE(tc1.pieces.size() == 2);
  CHECK(tc1.pieces[0].source == 0);
  CHECK(tc1.pieces[1].source == 1);
  CHECK(told(tc1, 59) == say(100.0 + 59.0));
  CHECK(told(tc1, 61) == "500");
}
