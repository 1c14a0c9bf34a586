// SPDX-License-Identifier: GPL-3.0-or-later
// Time of a channel that a person excluded.
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/measure/traces/trace_words.h"

using namespace soakwright;

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
