// SPDX-License-Identifier: GPL-3.0-or-later
// Excursions allowed that pile up, and who started and stopped the clock.
#include <catch2/catch.hpp>

#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;

namespace {

/// In 500 to 600 from 10 min to 110 min, but for `count` dips of 2 min from 20 min on, one every 4 min, 10 K
/// deep.
MadeRecord with_dips(int count) {
  std::vector<double> values;
  for (int i = 0; i <= 1200; ++i) {
    const double minute = i / 10.0;
    double celsius = minute < 10.0 || minute > 110.0 ? 400.0 : 550.0;
    for (int dip = 0; dip < count; ++dip)
      if (minute > 20.0 + 4.0 * dip && minute < 22.0 + 4.0 * dip) celsius = 490.0;
    values.push_back(celsius);
  }
  return MadeRecord::every(6, 1201).column("TC1", values);
}

Evaluated with_allowed(const MadeRecord& made, const std::string& keys) {
  return Evaluated(
      made, "[evaluation]\nexcursion_allowed = { time = \"3 min\", depth = 10 }\n" + hold_500_600_with(keys));
}

}  // namespace

TEST_CASE("Excursions allowed that are more than a tenth of a hold do not make it met") {
  // About 100 min in the range; each dip takes a little more than 2 min.
  const std::string keys = "time_min = \"95 min\"";
  CHECK(with_allowed(with_dips(0), keys).verdict("stage-1.hold-time") == "met");
  CHECK(with_allowed(with_dips(4), keys).verdict("stage-1.hold-time") == "met");
  const Evaluated many = with_allowed(with_dips(6), keys);
  CHECK(many.verdict("stage-1.hold-time") == "inconclusive");
  CHECK_THAT(many.text("stage-1.hold-time"),
             Catch::Contains("6 excursions allowed") && Catch::Contains("more than a tenth"));
  // Not met with them is not met; met without them is met.
  CHECK(with_allowed(with_dips(6), "time_min = \"102 min\"").verdict("stage-1.hold-time") == "not met");
  CHECK(with_allowed(with_dips(6), "time_min = \"60 min\"").verdict("stage-1.hold-time") == "met");
  CHECK(with_allowed(with_dips(6), "time_min = \"80 min\"\ncount = \"accumulated\"")
            .verdict("stage-1.hold-time") == "met");
  CHECK(with_allowed(with_dips(6), "time_min = \"95 min\"\ncount = \"accumulated\"")
            .verdict("stage-1.hold-time") == "inconclusive");
}

TEST_CASE("The edge of the tenth: exactly a tenth is not more") {
  // In the range for 1,000 s, 100 s of which are an excursion; without it 450 s at most.
  const auto verdict = [](double out_s) {
    std::vector<double> times{0,    100,      100.001, 550, 550.001, 550.001 + out_s, 550.002 + out_s,
                              1100, 1100.001, 1200};
    const MadeRecord made =
        MadeRecord(times).column("TC1", {490, 490, 500, 500, 499, 499, 500, 500, 490, 490});
    return Evaluated(made, "[evaluation]\ninterpolate_max = \"10 min\"\nexcursion_allowed = \"5 min\"\n" +
                               hold_500_600_with("time_min = \"900 s\""))
        .verdict("stage-1.hold-time");
  };
  CHECK(verdict(99.9) == "met");
  CHECK(verdict(100.1) == "inconclusive");
}

TEST_CASE("The number and sum of the excursions counted in are always told") {
  CHECK_THAT(with_allowed(with_dips(1), "time_min = \"60 min\"").text("stage-1.hold-time"),
             Catch::Contains("1 excursion allowed"));
  CHECK_THAT(with_allowed(with_dips(0), "time_min = \"60 min\"").text("stage-1.hold-time"),
             Catch::Contains("No excursion"));
}

TEST_CASE("The hold time names the thermocouples that started and stopped the clock") {
  MadeRecord made = plain_record();
  made.course("TC2", {{0, 20}, {70, 560}, {120, 560}, {180, 20}})
      .course("TC3", {{0, 20}, {60, 560}, {110, 560}, {170, 20}});
  const Evaluated evaluated(made, hold_500_600_with("time_min = \"1 h\""));
  CHECK(evaluated["stage-1.hold-time"].started_by == "TC2");
  CHECK(evaluated["stage-1.hold-time"].stopped_by == "TC3");
  // The record's own end is no thermocouple.
  const Evaluated ends(MadeRecord::every(60, 101).course("TC1", plain_run()),
                       hold_500_600_with("time_min = \"1 h\""));
  CHECK(ends["stage-1.hold-time"].started_by == "TC1");
  CHECK_FALSE(ends["stage-1.hold-time"].stopped_by);
}

TEST_CASE("An excursion is offered only where its depth is one that could be allowed") {
  const auto shortfall = [](double bottom) {
    // Out of the range for some 4 min at 80 min; the parts before and after are too short by themselves.
    const MadeRecord made = MadeRecord::every(10, 1081).course(
        "TC1",
        {{0, 20}, {60, 560}, {80, 560}, {80.5, bottom}, {84, bottom}, {84.5, 560}, {120, 560}, {180, 20}});
    return Evaluated(made, hold_500_600_with("time_min = \"60 min\"")).short_of("stage-1.hold-time");
  };
  CHECK_THAT(shortfall(480), Catch::Contains("excursion of 5 min and 20.0 °C allowed"));
  CHECK_THAT(shortfall(100), !Catch::Contains("allowed"));  // deeper than the range is wide
}

TEST_CASE("An accumulated hold names all its times") {
  // In the range until 83 min and again from 85 min on.
  const MadeRecord made = MadeRecord::every(60, 181).course(
      "TC1", {{0, 20}, {60, 560}, {80, 560}, {84, 480}, {88, 560}, {120, 560}, {180, 20}});
  const Evaluated evaluated(made, hold_500_600_with("time_min = \"70 min\"\ncount = \"accumulated\""));
  CHECK_THAT(evaluated.text("stage-1.hold-time"),
             Catch::Contains("0:53:20 to 1:23:00 and 1:25:00 to 2:06:40"));
}
