// SPDX-License-Identifier: GPL-3.0-or-later
// What a requirement would have come to on another basis, and what would have had to be different.
#include <catch2/catch.hpp>

#include "core/wording/result_words.h"
#include "tests/core/evaluate/hold_records.h"

using namespace soakwright;

namespace {

std::string told(const std::vector<RateAlternative>& rates) {
  std::string text;
  for (const RateAlternative& rate : rates) {
    if (!text.empty()) text += ", ";
    text += rate_basis_word(rate.window_minutes);
    text += ' ';
    text += say(rate.rate_c_per_h);
    text += ' ';
    text += say(rate.verdict);
  }
  return text;
}

std::string told(const std::vector<HoldAlternative>& holds) {
  std::string text;
  for (const HoldAlternative& hold : holds) {
    if (!text.empty()) text += ", ";
    text += say(hold.excursion_allowed_s) + ": ";
    text += say(hold.continuous_s) + " " + say(hold.accumulated_s);
  }
  return text;
}

}  // namespace

TEST_CASE("A rate is shown over 5, 15, 30 and 60 minutes and overall, each with its verdict") {
  // 5 K a minute for 40 min to 220, 10 K a minute for 10 min to 320, 5 K a minute for 36 min to 500, then
  // level.
  const MadeRecord made =
      MadeRecord::every(60, 121).course("TC1", {{0, 20}, {40, 220}, {50, 320}, {90, 520}, {120, 520}});
  const Evaluated evaluated(made, "[[stage]]\nkind = \"heat\"\nabove = 50\nbelow = 480\nrate_max = 420\n" +
                                      hold_500_600_with("time_min = \"10 min\""));
  const std::vector<RateAlternative>& rates = evaluated["stage-1.heating-rate"].alternatives.rates;
  REQUIRE(rates.size() == 5);
  CHECK(*rates[0].rate_c_per_h == close_to(600));
  CHECK(rates[0].verdict == Verdict::not_met);
  CHECK(*rates[1].rate_c_per_h == close_to(*evaluated["stage-1.heating-rate"].measured));
  CHECK(rates[1].verdict == evaluated["stage-1.heating-rate"].verdict);
  CHECK(rates[1].channel == "TC1");
  CHECK(*rates[3].rate_c_per_h < 420);
  CHECK(rates[3].verdict == Verdict::met);
  // The stage ends at 480, before the hold's 500: from 50 at 6 min to 480 at 82 min, 430 K in 76 min.
  CHECK_FALSE(rates[4].window_minutes);
  CHECK(*rates[4].rate_c_per_h == close_to(430.0 / 76.0 * 60.0));
  CHECK(rates[4].verdict == Verdict::met);
}

TEST_CASE("A rate that no window of a width can measure is inconclusive over that width") {
  const MadeRecord made = MadeRecord::every(60, 61).course("TC1", {{0, 20}, {40, 560}, {60, 560}});
  const Evaluated evaluated(made, "[[stage]]\nkind = \"heat\"\nabove = 100\nbelow = 550\nrate_max = 900\n" +
                                      hold_500_600_with("time_min = \"1 min\""));
  CHECK(told(evaluated["stage-1.heating-rate"].alternatives.rates) ==
        "5 min 810 met, 15 min 810 met, 30 min none inconclusive, 60 min none inconclusive, overall 810 met");
}

TEST_CASE("A hold is shown continuous and accumulated at excursion_allowed 0, 2, 5 and 10 min") {
  // 1,780 s and 2,500 s, 120 s between them: an excursion allowed of 2 min joins them to 4,400 s.
  const Evaluated evaluated(dipping(), hold_500_600_with("time_min = \"70 min\""));
  const std::string expected = "0: 2500 4280, 120: 4400 4400, 300: 4400 4400, 600: 4400 4400";
  CHECK(told(evaluated["stage-1.hold-time"].alternatives.holds) == expected);
  CHECK(told(evaluated.stage(1).by_excursion_allowed) == expected);
  CHECK(evaluated.told("stage-1.hold-time") == "2500 not met");
  // What is evaluated keeps its own excursion_allowed.
  const Evaluated filled(dipping(), "[evaluation]\nexcursion_allowed = \"3 min\"\n" +
                                        hold_500_600_with("time_min = \"70 min\""));
  CHECK(told(filled["stage-1.hold-time"].alternatives.holds) == expected);
  CHECK(filled.told("stage-1.hold-time") == "4400 met");
  // A depth of 10 K forgives no dip of 20 K, however short.
  const Evaluated shallow(dipping(), "[evaluation]\nexcursion_allowed = { time = \"1 min\", depth = 10 }\n" +
                                         hold_500_600_with("time_min = \"70 min\""));
  CHECK(told(shallow["stage-1.hold-time"].alternatives.holds) ==
        "0: 2500 4280, 120: 2500 4280, 300: 2500 4280, 600: 2500 4280");
}

TEST_CASE("A hold without a time limit still shows its times by excursion_allowed") {
  const Evaluated evaluated(dipping(), hold_500_600_with("spread_max = 10"));
  CHECK(told(evaluated.stage(1).by_excursion_allowed) ==
        "0: 2500 4280, 120: 4400 4400, 300: 4400 4400, 600: 4400 4400");
}

TEST_CASE(
    "Each thermocouple's way in and out stands beside the hold time, the two readings beside a spread") {
  MadeRecord made = plain_record();
  made.course("TC2", {{0, 20}, {2, 20}, {62, 550}, {122, 550}, {182, 20}});
  const Evaluated evaluated(made, hold_500_600_with("time_min = \"80 min\"\nspread_max = 5"));
  const std::vector<InAndOutAlternative>& channels =
      evaluated["stage-1.hold-time"].alternatives.thermocouples;
  REQUIRE(channels.size() == 2);
  CHECK(channels[0].channel == "TC1");
  CHECK(*channels[0].in_s == close_to(3200));
  CHECK(*channels[0].out_s == close_to(7600));
  CHECK(*channels[1].in_s == close_to(120 + 480.0 / 530 * 3600, 0.5));  // readings to 0.1 °C
  const auto& spread = evaluated["stage-1.spread"].alternatives.spread;
  REQUIRE(spread);
  CHECK(spread->hottest_c - spread->coldest_c == close_to(*evaluated["stage-1.spread"].measured));
}

TEST_CASE("What is not met says by how much") {
  const auto needs = [](const MadeRecord& made, const std::string& procedure, const std::string& id,
                        const std::string& job = {}) { return Evaluated(made, procedure, job).short_of(id); };
  const MadeRecord plain = plain_record();
  CHECK(needs(plain, hold_500_600_with("time_min = \"75 min\""), "stage-1.hold-time") ==
        "Hold time is 1 min 40 s short. The clock started at 0:53:20, when TC1 came into range. "
        "The clock stopped at 2:06:40, when TC1 left the range.");
  CHECK_THAT(needs(dipping(), hold_500_600_with("time_min = \"70 min\""), "stage-1.hold-time"),
             Catch::Contains("With an excursion of 2 min and 20.0 °C allowed it would be 1 h 13 min 20 s."));
  CHECK(needs(plain, "[record]\ntemperature_max = 550\n" + hold_500_600_with("spread_max = 9"),
              "record.temperature-max") == "TC1 was 10.0 °C too hot at 1:00:00.");
  // 9 K a minute is 135 K in a window of 15 min; 480 C/h leave 120 K.
  CHECK(needs(plain,
              "[[stage]]\nkind = \"heat\"\nabove = 100\nbelow = 550\nrate_max = 480\n" +
                  hold_500_600_with("spread_max = 9"),
              "stage-1.heating-rate") ==
        "TC1 heated 60.0 °C/h too fast: by 135.0 °C in 15 min, where the limit allows 120.0 °C.");
  // 100 to 500 takes 44 min 27 s; at 600 C/h 40 min.
  CHECK(
      needs(plain,
            "[[stage]]\nkind = \"heat\"\nabove = 100\nrate_min = 600\n" + hold_500_600_with("spread_max = 9"),
            "stage-1.heating-rate-min") == "TC1 took 44 min 27 s for the ramp; the limit allows 40 min.");
  MadeRecord two = MadeRecord::every(60, 31).column("TC1", std::vector<double>(31, 580.0));
  two.column("TC2", std::vector<double>(31, 555.0));
  CHECK(needs(two, hold_500_600_with("spread_max = 20"), "stage-1.spread") ==
        "The spread between TC1 and TC2 was 5.0 °C too wide at 0:00:00.");
  CHECK(needs(plain, "[record]\nthermocouples_min = 3\n" + hold_500_600_with("spread_max = 9"),
              "record.thermocouples") == "The number of thermocouples with valid readings is 2 too low.");
  CHECK(needs(plain, "[record]\nsampling_interval_max = \"30 s\"\n" + hold_500_600_with("spread_max = 9"),
              "record.sampling-interval") == "The sampling interval is 30 s too long.");
  CHECK(needs(plain, hold_500_600_with("time_max = \"70 min\""), "stage-1.hold-time-max") ==
        "TC1 was at temperature 3 min 20 s too long.");
  CHECK(needs(dipping(), hold_500_600_with("excursion_time_max = \"1 min\""), "stage-1.excursion-time") ==
        "Time out of range is 1 min too long.");
  const MadeRecord cold = MadeRecord::every(60, 61).course("TC1", {{0, 20}, {60, 400}});
  CHECK(needs(cold, hold_500_600_with("time_min = \"1 h\""), "stage-1.hold-time") ==
        "The thermocouples were never in the holding temperature range together; 1 h are required.");
}

TEST_CASE("What is met has no shortfall, what is inconclusive says what is missing, or that U is included") {
  CHECK(Evaluated(plain_record(), hold_500_600_with("time_min = \"70 min\""))
            .short_of("stage-1.hold-time")
            .empty());
  // It ends in the hold, 2,800 s of it shown.
  const MadeRecord ends = MadeRecord::every(60, 101).course("TC1", plain_run());
  CHECK_THAT(Evaluated(ends, hold_500_600_with("time_min = \"70 min\"")).short_of("stage-1.hold-time"),
             Catch::Contains("the record does not show whether the hold was longer"));
  MadeRecord made = MadeRecord::every(60, 31).column("TC1", std::vector<double>(31, 597.0));
  made.entry("TC1", 0);
  const Evaluated guarded(
      made, "[evaluation]\ndecision_rule = \"guarded\"\n" + hold_500_600_with("time_min = \"1 min\""),
      "[[thermocouple]]\ncolumn = \"TC1\"\ntolerance = \"±6 C\"\n");
  // U = 2·√12.000833 = 6.93; 597 + 6.93 − 600 = 3.93.
  CHECK(guarded.short_of("stage-1.over-temperature") ==
        "TC1 was 3.9 °C too hot at 0:00:00. The expanded uncertainty U is included.");
}
