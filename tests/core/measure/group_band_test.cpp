#include "core/measure/group_band.h"

#include <catch2/catch.hpp>

#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

GroupBand band_of(const Traced& made, const Grace& grace = {}) {
  return group_in_band(made.set, made.group, made.time(), 500, 600, grace);
}

std::string states(const GroupBand& band) {
  std::string text;
  for (const GroupSpan& span : band.spans) {
    if (!text.empty()) text += ", ";
    text += span.state == GroupState::in ? "in " : span.state == GroupState::out ? "out " : "unknown ";
    text += say(Span{span.from, span.to});
  }
  return text;
}

std::string departures(const GroupBand& band) {
  std::string text;
  for (const Departure& departure : band.departures) {
    if (!text.empty()) text += ' ';
    text += say(departure.time);
    if (departure.filled) text += "(filled)";
  }
  return text;
}

/// A row a minute and lines of a minute only: an empty cell is a hole.
Traced minutes(std::vector<double> tc1, std::vector<double> tc2) {
  const std::size_t rows = tc1.size();
  return Traced(MadeRecord::every(60, rows).column("TC1", std::move(tc1)).column("TC2", std::move(tc2)), 60);
}

Grace grace_of(double time_s) { return {time_s, std::nullopt}; }
Grace grace_of(double time_s, double depth_k) { return {time_s, TemperatureDifference::of_kelvin(depth_k)}; }

}  // namespace

TEST_CASE("The group is in where all are known to be in, out where any is known to be out, else unknown") {
  struct Case {
    const char* what;
    std::vector<double> tc1, tc2;
    const char* states;
    const char* stretches;
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
    const GroupBand band = band_of(made);
    CHECK(states(band) == c.states);
    CHECK(say(band.stretches) == c.stretches);
  }
}

TEST_CASE("While one channel is put aside the group is judged on those that remain") {
  const MadeRecord made = MadeRecord::every(60, 6)
                              .column("TC1", {550, 550, 550, 550, 550, 550})
                              .column("TC2", {550, 550, 450, 450, 550, 550});
  SECTION("out while it counts") {
    CHECK(states(band_of(Traced(made))) == "in 0..90, out 90..210, in 210..300");
  }
  SECTION("in while it is put aside") {
    CHECK(states(band_of(Traced(MadeRecord(made).aside("TC2", 70, 230)))) == "in 0..300");
  }
  SECTION("with none left the group is unknown") {
    const Traced none(MadeRecord(made).aside("TC2", 70, 230).aside("TC1", 100, 130));
    CHECK(states(band_of(none)) == "in 0..100, unknown 100..130, in 130..300");
  }
  SECTION("one put aside leaves the other's unknown time unknown") {
    const Traced hole(MadeRecord(made).aside("TC2", 70, 230).missing("TC1", 120, 120), 60);
    CHECK(states(band_of(hole)) == "in 0..60, unknown 60..180, in 180..300");
  }
}

TEST_CASE("A reading with no line on either side is known at its instant") {
  const Traced made(MadeRecord::every(60, 7).column("TC1", {550, 550, kNoReading, 450, kNoReading, 550, 550}),
                    60);
  const GroupBand band = band_of(made);
  CHECK(states(band) == "in 0..60, unknown 60..300, in 300..360");
  CHECK(say(band.lone_outs) == "180");
  CHECK(band.departures.empty());
}

TEST_CASE("A departure no longer and no deeper than the grace is filled") {
  // 560 to 440 and back: below 500 from 90 s to 150 s, 60 K deep.
  struct Case {
    Grace grace;
    const char* stretches;
    const char* departures;
  };
  const std::vector<Case> cases = {
      {Grace{}, "0..90 150..240", "90..150"},
      {grace_of(60), "0..240", "90..150(filled)"},  // as long as the grace
      {grace_of(59), "0..90 150..240", "90..150"},
      {grace_of(60, 60), "0..240", "90..150(filled)"},  // as deep
      {grace_of(60, 59.9), "0..90 150..240", "90..150"},
      {grace_of(59, 60), "0..90 150..240", "90..150"},
      {grace_of(600, 600), "0..240", "90..150(filled)"},
      {grace_of(0, 600), "0..90 150..240", "90..150"},
  };
  const Traced made(MadeRecord::every(60, 5).column("TC1", {560, 560, 440, 560, 560}));
  for (const Case& c : cases) {
    CAPTURE(c.grace.time_s, c.grace.depth.has_value());
    const GroupBand band = band_of(made, c.grace);
    CHECK(say(band.stretches) == c.stretches);
    CHECK(departures(band) == c.departures);
  }
}

TEST_CASE("The depth of a departure is that of the channel farthest outside, above as below") {
  // TC1 is at most 20 below, TC2 at most 90 above in the same departure.
  const Traced made = minutes({560, 560, 480, 560, 560}, {560, 560, 690, 560, 560});
  const Depth depth = depth_of(made.set, made.group, {60, 180}, 500, 600);
  CHECK(depth.kelvin == close_to(90));
  CHECK(depth.celsius == close_to(690));
  CHECK(made.set.traces[depth.trace].name == "TC2");
  CHECK(say(band_of(made, grace_of(600, 89.9)).stretches).find("0..240") == std::string::npos);
  CHECK(say(band_of(made, grace_of(600, 90)).stretches) == "0..240");
}

TEST_CASE("Two channels out one into the other make one departure") {
  // TC1 is out from 90 s to 150 s; TC2 from 135 s (520 to 440: a quarter of the way) to 210 s.
  const Traced made = minutes({560, 560, 440, 560, 560, 560}, {560, 560, 520, 440, 560, 560});
  CHECK(departures(band_of(made, grace_of(119))) == "90..210");
  CHECK(departures(band_of(made, grace_of(120))) == "90..210(filled)");
}

TEST_CASE("Grace fills only what is known to be a departure throughout, between times in the band") {
  constexpr double none = kNoReading;
  struct Case {
    const char* what;
    std::vector<double> values;
    const char* stretches;
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
    CHECK(say(band_of(made, grace_of(3600)).stretches) == c.stretches);
  }
}

TEST_CASE("A band without an upper edge is never left upwards") {
  const Traced made(MadeRecord::every(60, 3).column("TC1", {400, 600, 1400}));
  const GroupBand band =
      group_in_band(made.set, made.group, made.time(), 500, std::numeric_limits<double>::infinity(), {});
  CHECK(states(band) == "out 0..30, in 30..120");
}
