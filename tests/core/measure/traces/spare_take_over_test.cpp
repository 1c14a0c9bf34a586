// SPDX-License-Identifier: GPL-3.0-or-later
// A spare that takes over from its channel.
#include "core/measure/traces/spare_take_over.h"

#include <catch2/catch.hpp>

#include "tests/core/measure/traces/trace_words.h"

using namespace soakwright;

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
