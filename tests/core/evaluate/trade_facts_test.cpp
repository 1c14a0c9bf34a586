// SPDX-License-Identifier: GPL-3.0-or-later
// What every heat treater takes for granted, one fact a test: common practice, no source, where none is
// named. Each is worked by hand on plain_record()'s course: 9 K a minute up and down.
#include <catch2/catch.hpp>

#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;

namespace {

std::string ramp(const std::string& kind, const std::string& keys) {
  return "[[stage]]\nkind = \"" + kind + "\"\n" + keys + "\n";
}

/// TC1 as in plain_run(), in 500…600 from 3,200 s to 7,600 s; TC2 comes 4 min later and leaves 6 min earlier:
/// from 57 min 20 s to 120 min 40 s, 3,440 s to 7,240 s.
MadeRecord one_ahead_one_behind() {
  return plain_record().course("TC2", {{4, 20}, {64, 560}, {114, 560}, {174, 20}});
}

}  // namespace

TEST_CASE("The clock starts when the last thermocouple is in and stops when the first leaves") {
  const Evaluated evaluated(one_ahead_one_behind(), hold_500_600_with("time_min = \"60 min\""));
  const Requirement& time = evaluated["stage-1.hold-time"];
  CHECK(*time.from_s == close_to(3440));
  CHECK(*time.to_s == close_to(7240));
  CHECK(*time.measured == close_to(3800));
  // Neither alone, nor their mean, would have been the hold: TC1 alone was in for 4,400 s.
  CHECK(evaluated.verdict("stage-1.hold-time") == "met");
  CHECK(Evaluated(one_ahead_one_behind(), hold_500_600_with("time_min = \"70 min\""))
            .verdict("stage-1.hold-time") == "not met");
}

TEST_CASE(
    "Going up the hottest governs: what is required above a temperature is required from where it gets "
    "there") {
  // TC2 stands at 20 until 30 min, then follows at 18 K a minute. TC1 passes 300 at 31.1 min: at 32 min it
  // reads 308 and TC2 56. When TC2 passes 300, at 45.6 min, only 122 K and less are left.
  MadeRecord made = plain_record();
  made.course("TC2", {{30, 20}, {60, 560}, {120, 560}, {180, 20}});
  const Evaluated evaluated(made, ramp("heat", "above = 300\nspread_max = 130"));
  const Requirement& spread = evaluated["stage-1.spread"];
  CHECK(*spread.measured == close_to(252));
  CHECK(*spread.at_s == close_to(32 * 60));
  CHECK(spread.channel == "TC1");
  CHECK(spread.channel_2 == "TC2");
  CHECK(evaluated.verdict("stage-1.spread") == "not met");
}

TEST_CASE("Going down the coldest governs: the hold is over when the first thermocouple falls out of it") {
  const Evaluated evaluated(one_ahead_one_behind(), hold_500_600_with("time_min = \"60 min\""));
  const auto& thermocouples = evaluated["stage-1.hold-time"].alternatives.thermocouples;
  REQUIRE(thermocouples.size() == 2);
  CHECK(*thermocouples[0].out_s == close_to(7600));
  CHECK(*thermocouples[1].out_s == close_to(7240));
  CHECK(*evaluated["stage-1.hold-time"].to_s == *thermocouples[1].out_s);
}

TEST_CASE("A temperature limit is held against every thermocouple, never against their mean") {
  // 610 and 560: their mean, 585, would have stayed below 600.
  MadeRecord made = plain_record();
  made.course("TC2", {{0, 20}, {60, 610}, {120, 610}, {180, 20}});
  const Evaluated evaluated(made,
                            "[record]\ntemperature_max = 600\n" + hold_500_600_with("time_min = \"5 min\""));
  CHECK(evaluated.told("record.temperature-max") == "610 not met");
  CHECK(evaluated["record.temperature-max"].channel == "TC2");
  CHECK(evaluated.told("stage-1.over-temperature") == "610 not met");
}

TEST_CASE("Hold time follows thickness, temperature and time follow material") {
  // UCS-56 (ASME BPVC VIII-1), as given there: P-No. 1 at least 595 °C, 1 h per inch up to 2 in; P-No. 4 at
  // least 650 °C. 10 K a minute to 620, level from 60 to 140 min: above 595 °C from 57.5 to 142.5 min, 85
  // min.
  const MadeRecord made =
      MadeRecord::every(60, 201).course("TC1", {{0, 20}, {60, 620}, {140, 620}, {200, 20}});
  struct Case {
    const char* low;
    const char* thickness;
    const char* verdict;
  };
  const Case cases[] = {
      {"595", "1 in", "met"},        // 60 min
      {"595", "1.4 in", "met"},      // 84 min
      {"595", "1.5 in", "not met"},  // 90 min
      {"650", "1 in", "not met"},    // never there
  };
  for (const Case& c : cases) {
    CAPTURE(c.low, c.thickness);
    const std::string procedure = ramp(
        "hold",
        std::string("low = ") + c.low +
            "\ntime_min = { points = [[\"0.25 in\", \"15 min\"], [\"2 in\", \"2 h\"]], beyond = \"15 min "
            "per 1 in\" }");
    const Evaluated evaluated(
        made, procedure, std::string("[[weld]]\nnumber = \"W-1\"\nthickness = \"") + c.thickness + "\"\n");
    CHECK(evaluated.verdict("stage-1.hold-time") == c.verdict);
  }
}

TEST_CASE("Heating and cooling limits are often the same, and each is held against its own direction") {
  // 1,500 / 2 and 1,500 / 3: 540 C/h up and down lie between.
  const std::string thin = "rate_max = { over = 1500, per = \"mm\" }\nabove = 300";
  for (const auto& [thickness, expected] : {std::pair{"2 mm", "met"}, std::pair{"3 mm", "not met"}}) {
    CAPTURE(thickness);
    const Evaluated evaluated(
        plain_record(), ramp("heat", thin) + hold_500_600_with("time_min = \"5 min\"") + ramp("cool", thin),
        std::string("[[weld]]\nnumber = \"W-1\"\nthickness = \"") + thickness + "\"\n");
    CHECK(evaluated["stage-1.heating-rate"].limit == evaluated["stage-3.cooling-rate"].limit);
    CHECK(*evaluated["stage-1.heating-rate"].measured == close_to(540));
    CHECK(*evaluated["stage-3.cooling-rate"].measured == close_to(540));
    CHECK(evaluated.verdict("stage-1.heating-rate") == expected);
    CHECK(evaluated.verdict("stage-3.cooling-rate") == expected);
  }
}

TEST_CASE("A preheat asks a temperature and a time, and has no upper edge unless one is given") {
  // At least 120 °C for 20 min; it deviations from 130 up to 240 meanwhile.
  const MadeRecord made = MadeRecord::every(60, 61).course("TC1", {{0, 20}, {10, 130}, {50, 240}, {60, 20}});
  const Evaluated evaluated(made, ramp("hold", "low = 120\ntime_min = \"20 min\""));
  CHECK(evaluated.verdict("stage-1.hold-time") == "met");
  CHECK_FALSE(evaluated.has("stage-1.over-temperature"));
  CHECK(Evaluated(made, ramp("hold", "low = 120\ntime_min = \"60 min\"")).verdict("stage-1.hold-time") ==
        "not met");
  CHECK(Evaluated(made, ramp("hold", "low = 250\ntime_min = \"20 min\"")).verdict("stage-1.hold-time") ==
        "not met");
}

TEST_CASE("A bake-out may have no controlled cooling: no stage, no limit") {
  // 300 °C for an hour (API RP 934-C, dehydrogenation: at least 300 °C for at least 1 h), then let go: 280 K
  // within two minutes.
  const MadeRecord made =
      MadeRecord::every(60, 131).course("TC1", {{0, 20}, {30, 320}, {100, 320}, {102, 40}, {130, 20}});
  const Evaluated evaluated(made, ramp("hold", "low = 300\ntime_min = \"1 h\""));
  CHECK(evaluated.all.verdict == Verdict::met);
  CHECK(evaluated.all.requirements.size() == 1);
  // The same fall under a limit would have been one.
  CHECK(Evaluated(made, ramp("hold", "low = 300\ntime_min = \"1 h\"") + ramp("cool", "rate_max = 200"))
            .verdict("stage-2.cooling-rate") == "not met");
}

TEST_CASE("A rate is argued about over short and over hourly windows, so both are named") {
  // Ten minutes at 18 K a minute in a ramp of 4 K a minute: 1,080 C/h over 5 min, over an hour 180 K + 200 K.
  const MadeRecord made =
      MadeRecord::every(60, 121).course("TC1", {{0, 20}, {50, 220}, {60, 400}, {110, 600}, {120, 600}});
  const Evaluated evaluated(made, ramp("heat", "rate_max = 500"));
  const std::vector<RateAlternative>& rates = evaluated["stage-1.heating-rate"].alternatives.rates;
  REQUIRE(rates.size() == 5);
  CHECK(rates[0].window_minutes == 5);
  CHECK(*rates[0].rate_c_per_h == close_to(1080));
  CHECK(rates[3].window_minutes == 60);
  CHECK(*rates[3].rate_c_per_h < 500);
  CHECK(*rates[3].rate_c_per_h > 380);
}

TEST_CASE("A log is usually written every minute or more often, and a limit can ask for that") {
  const std::string specified =
      "[record]\nsampling_interval_max = \"60 s\"\n" + hold_500_600_with("time_min = \"5 min\"");
  CHECK(Evaluated(plain_record(), specified).told("record.sampling-interval") == "60 met");
  CHECK(Evaluated(MadeRecord::every(90, 121).course("TC1", plain_run()), specified)
            .told("record.sampling-interval") == "90 not met");
}
