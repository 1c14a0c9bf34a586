// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/holds/group_range.h"

#include <catch2/catch.hpp>

#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

GroupRange range_of(const Traced& made, const ExcursionAllowed& excursion_allowed = {}) {
  return group_in_range(made.set, made.group, made.time(), 500, 600, excursion_allowed);
}

std::string states(const GroupRange& range) {
  std::string text;
  for (const GroupSpan& span : range.spans) {
    if (!text.empty()) text += ", ";
    text += span.state == GroupState::in ? "in " : span.state == GroupState::out ? "out " : "unknown ";
    text += say(Span{span.from, span.to});
  }
  return text;
}

std::string excursions(const GroupRange& range) {
  std::string text;
  for (const Excursion& excursion : range.excursions) {
    if (!text.empty()) text += ' ';
    text += say(excursion.time);
    if (excursion.filled) text += "(filled)";
  }
  return text;
}

/// A row a minute and lines of a minute only: an empty cell is a hole.
Traced minutes(std::vector<double> tc1, std::vector<double> tc2) {
  const std::size_t rows = tc1.size();
  return Traced(MadeRecord::every(60, rows).column("TC1", std::move(tc1)).column("TC2", std::move(tc2)), 60);
}

ExcursionAllowed excursion_allowed_of(double time_s) { return {time_s, std::nullopt}; }
ExcursionAllowed excursion_allowed_of(double time_s, double depth_k) {
  return {time_s, TemperatureDifference::of_kelvin(depth_k)};
}

}  // namespace

TEST_CASE("The group is in where all are known to be in, out where any is known to be out, else unknown") {
  struct Case {
    const char* what;
    std::vector<double> tc1, tc2;
    const char* states;
    const char* in_range;
  };
  constexpr double none = kNoReading;
  const std::vector<Case> cases = {
      {"both in", {550, 550, 550}, {550, 550, 550}, "in 0..120", "0..120"},
      // TC2 passes 500 half way in the first minute.
      {"the last one in starts it", {550, 550, 550}, {450, 550, 550}, "out 0..30, in 30..120", "30..120"},
      {"the first one out ends it", {550, 550, 450}, {550, 550, 550}, "in 0..90, out 90..120", "0..90"},
      {"one too hot is out", {550, 550, 650}, {550, 550, 550}, "in 0..90, out 90..120", "0..90"},
      // TC2 has no line from 60 s to 180 s.
      {"one unknown",
       {550, 550, 550, 550, 550},
       {550, 550, none, 550, 550},
       "in 0..60, unknown 60..180, in 180..240",
       "0..60 180..240"},
      {"out wins over unknown", {450, 450, 450, 450, 450}, {550, 550, none, 550, 550}, "out 0..240", ""},
      {"unknown before the first and after the last reading",
       {550, 550, 550},
       {none, 550, none},
       "unknown 0..120",
       ""},
      {"nothing known", {none, none}, {none, none}, "unknown 0..60", ""},
  };
  for (const Case& c : cases) {
    CAPTURE(c.what);
    const Traced made(MadeRecord::every(60, c.tc1.size()).column("TC1", c.tc1).column("TC2", c.tc2), 60);
    const GroupRange range = range_of(made);
    CHECK(states(range) == c.states);
    CHECK(say(range.in_range) == c.in_range);
  }
}

TEST_CASE("While one channel is excluded the group is evaluated on those that remain") {
  const MadeRecord made = MadeRecord::every(60, 6)
                              .column("TC1", {550, 550, 550, 550, 550, 550})
                              .column("TC2", {550, 550, 450, 450, 550, 550});
  SECTION("out while it counts") {
    CHECK(states(range_of(Traced(made))) == "in 0..90, out 90..210, in 210..300");
  }
  SECTION("in while it is excluded") {
    CHECK(states(range_of(Traced(MadeRecord(made).exclusion("TC2", 70, 230)))) == "in 0..300");
  }
  SECTION("with none left the group is unknown") {
    // TC1's exclusion reaches out to its readings at 60 s and 180 s.
    const Traced none(MadeRecord(made).exclusion("TC2", 70, 230).exclusion("TC1", 100, 130));
    CHECK(states(range_of(none)) == "in 0..60, unknown 60..180, in 180..300");
  }
  SECTION("one excluded leaves the other's unknown time unknown") {
    const Traced hole(MadeRecord(made).exclusion("TC2", 70, 230).missing("TC1", 120, 120), 60);
    CHECK(states(range_of(hole)) == "in 0..60, unknown 60..180, in 180..300");
  }
}

TEST_CASE("A reading with no line on either side is known at its instant") {
  const Traced made(MadeRecord::every(60, 7).column("TC1", {550, 550, kNoReading, 450, kNoReading, 550, 550}),
                    60);
  const GroupRange range = range_of(made);
  CHECK(states(range) == "in 0..60, unknown 60..180, out 180..180, unknown 180..300, in 300..360");
  CHECK(say(range.in_range) == "0..60 300..360");
}

TEST_CASE("A reading out of the range between two excluded times interrupts a time in range") {
  const Traced made(MadeRecord::every(60, 7)
                        .column("TC1", {550, 550, 550, 550, 550, 550, 550})
                        .column("TC2", {550, 550, 0, 450, 0, 550, 550})
                        .exclusion("TC2", 120, 120)
                        .exclusion("TC2", 240, 240));
  CHECK(states(range_of(made)) == "in 0..180, out 180..180, in 180..360");
  CHECK(say(range_of(made).in_range) == "0..180 180..360");
}

TEST_CASE("A reading out of the range at the record's end ends the time before it") {
  const Traced made(MadeRecord::every(60, 5).column("TC1", {550, 550, 550, kNoReading, 450}), 60);
  CHECK(states(range_of(made)) == "in 0..120, unknown 120..240, out 240..240");
}

TEST_CASE("A time in range is begun by the last channel to come in and ended by the first to leave") {
  const Traced made(MadeRecord::every(60, 9)
                        .column("TC1", {550, 550, 550, 550, 550, 550, 450, 450, 450})
                        .column("TC2", {450, 450, 550, 550, 550, 550, 550, 550, 450})
                        .column("TC3", {450, 550, 550, 550, 550, 550, 550, 450, 450}));
  const GroupRange range = range_of(made);
  REQUIRE(range.in_range_by.size() == 1);
  CHECK(range.in_range_by[0].begun_by == 1U);
  CHECK(range.in_range_by[0].ended_by == 0U);
}

TEST_CASE("The record's ends begin and end a time in range without a thermocouple") {
  const Traced made(MadeRecord::every(60, 3).column("TC1", {550, 550, 550}));
  CHECK_FALSE(range_of(made).in_range_by[0].begun_by);
  CHECK_FALSE(range_of(made).in_range_by[0].ended_by);
}

TEST_CASE("A channel that becomes unknown ends a time in range") {
  const Traced made(MadeRecord::every(60, 6)
                        .column("TC1", {550, 550, 550, 550, 550, 550})
                        .column("TC2", {550, 550, 550, kNoReading, kNoReading, 550}),
                    60);
  CHECK(states(range_of(made)) == "in 0..120, unknown 120..300");
  CHECK(range_of(made).in_range_by[0].ended_by == 1U);
}

TEST_CASE("With a depth allowed, an excursion in which a channel is unknown is not filled") {
  // TC1 is at 450 from 100 s to 140 s; TC2 is unknown from 100 s to 130 s.
  std::vector<double> dip(25, 550);
  for (std::size_t row = 10; row <= 14; ++row) dip[row] = 450;
  const MadeRecord known =
      MadeRecord::every(10, 25).column("TC1", dip).column("TC2", std::vector<double>(25, 550));
  const MadeRecord hole = MadeRecord(known).missing("TC2", 110, 120);
  const auto in_range = [](const MadeRecord& made, const ExcursionAllowed& allowed) {
    const Traced traced(made, 20);
    return say(group_in_range(traced.set, traced.group, traced.time(), 500, 600, allowed).in_range);
  };
  CHECK(in_range(known, excursion_allowed_of(60, 50)) == "0..240");
  CHECK(in_range(hole, excursion_allowed_of(60, 50)) == "0..95 145..240");
  CHECK(in_range(hole, excursion_allowed_of(60)) == "0..240");
}

TEST_CASE("An excursion no longer and no deeper than the excursion_allowed is filled") {
  // 560 to 440 and back: below 500 from 90 s to 150 s, 60 K deep.
  struct Case {
    ExcursionAllowed excursion_allowed;
    const char* in_range;
    const char* excursions;
  };
  const std::vector<Case> cases = {
      {ExcursionAllowed{}, "0..90 150..240", "90..150"},
      {excursion_allowed_of(60), "0..240", "90..150(filled)"},  // as long as the excursion_allowed
      {excursion_allowed_of(59), "0..90 150..240", "90..150"},
      {excursion_allowed_of(60, 60), "0..240", "90..150(filled)"},  // as deep
      {excursion_allowed_of(60, 59.9), "0..90 150..240", "90..150"},
      {excursion_allowed_of(59, 60), "0..90 150..240", "90..150"},
      {excursion_allowed_of(600, 600), "0..240", "90..150(filled)"},
      {excursion_allowed_of(0, 600), "0..90 150..240", "90..150"},
  };
  const Traced made(MadeRecord::every(60, 5).column("TC1", {560, 560, 440, 560, 560}));
  for (const Case& c : cases) {
    CAPTURE(c.excursion_allowed.time_s, c.excursion_allowed.depth.has_value());
    const GroupRange range = range_of(made, c.excursion_allowed);
    CHECK(say(range.in_range) == c.in_range);
    CHECK(excursions(range) == c.excursions);
  }
}

TEST_CASE("The depth of an excursion is that of the channel farthest outside, above as below") {
  // TC1 is at most 20 below, TC2 at most 90 above in the same excursion.
  const Traced made = minutes({560, 560, 480, 560, 560}, {560, 560, 690, 560, 560});
  const Depth depth = depth_of(made.set, made.group, {60, 180}, 500, 600);
  CHECK(depth.kelvin == close_to(90));
  CHECK(depth.celsius == close_to(690));
  CHECK(made.set.traces[depth.trace].name == "TC2");
  CHECK(say(range_of(made, excursion_allowed_of(600, 89.9)).in_range).find("0..240") == std::string::npos);
  CHECK(say(range_of(made, excursion_allowed_of(600, 90)).in_range) == "0..240");
}

TEST_CASE("The depth of a time is that of its own readings, not of the next one") {
  // The readings of 700 °C at the start and of 440 °C at 180 s are none of it.
  const Traced made(MadeRecord::every(60, 5).column("TC1", {700, 530, 530, 440, 560}));
  const Depth depth = depth_of(made.set, made.group, {60, 120}, 540, 600);
  CHECK(depth.kelvin == close_to(10));
  CHECK(depth.celsius == close_to(530));
  // Half way to the next one it is 485 °C.
  CHECK(depth_of(made.set, made.group, {60, 150}, 540, 600).kelvin == close_to(55));
}

TEST_CASE("Two channels out one into the other make one excursion") {
  // TC1 is out from 90 s to 150 s; TC2 from 135 s (520 to 440: a quarter of the way) to 210 s.
  const Traced made = minutes({560, 560, 440, 560, 560, 560}, {560, 560, 520, 440, 560, 560});
  CHECK(excursions(range_of(made, excursion_allowed_of(119))) == "90..210");
  CHECK(excursions(range_of(made, excursion_allowed_of(120))) == "90..210(filled)");
}

TEST_CASE(
    "ExcursionAllowed fills only what is known to be an excursion throughout, between times in the range") {
  constexpr double none = kNoReading;
  struct Case {
    const char* what;
    std::vector<double> values;
    const char* in_range;
  };
  const std::vector<Case> cases = {
      {"at the record's start", {440, 560, 560}, "30..120"},
      {"at the record's end", {560, 560, 440}, "0..90"},
      {"beside a hole", {560, 560, 440, none, 560, 560}, "0..90 240..300"},
      {"after a hole", {560, 560, none, 440, 560, 560}, "0..60 210..300"},
      {"a hole alone", {560, 560, none, 560, 560}, "0..60 180..240"},
  };
  for (const Case& c : cases) {
    CAPTURE(c.what);
    const Traced made(MadeRecord::every(60, c.values.size()).column("TC1", c.values), 60);
    CHECK(say(range_of(made, excursion_allowed_of(3600)).in_range) == c.in_range);
  }
}

TEST_CASE("A range without an upper edge is never left upwards") {
  const Traced made(MadeRecord::every(60, 3).column("TC1", {400, 600, 1400}));
  const GroupRange range =
      group_in_range(made.set, made.group, made.time(), 500, std::numeric_limits<double>::infinity(), {});
  CHECK(states(range) == "out 0..30, in 30..120");
}
