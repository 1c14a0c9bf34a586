// SPDX-License-Identifier: GPL-3.0-or-later
// Heat and cool stages as requirements: rate, smallest overall rate, spread, and what a record cannot show.
#include <cmath>
#include <locale>

#include <catch2/catch.hpp>

#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;

namespace {

std::string heat(const std::string& keys) { return "[[stage]]\nkind = \"heat\"\n" + keys + "\n"; }
std::string cool(const std::string& keys) { return "[[stage]]\nkind = \"cool\"\n" + keys + "\n"; }
std::string hold() { return hold_500_600_with("time_min = \"10 min\""); }

/// 540 °C/h up and down, see plain_record().
Evaluated plain(const std::string& procedure) { return Evaluated(plain_record(), procedure); }

}  // namespace

// ---- rate ----

TEST_CASE("A rate is met up to its limit, inconclusive within four standard errors of it, not met beyond") {
  // 540 °C/h, straight: the noise is that of the last digit, q/√12. Windows have 15 rows, a minute apart. The
  // overall rate is 540 too: from 300 to 500 in 1,333 s, 4·√2·s/Δt = 0.441.
  const double s = 0.1 / std::sqrt(12.0);
  const double four_se = 4 * s * 60 * std::sqrt(12.0 / (15.0 * 224.0));
  REQUIRE(four_se == close_to(0.414, 0.0005));
  struct Case {
    double limit;
    const char* expected;
  };
  const Case cases[] = {{600, "met"},
                        {540, "met"},
                        {539.9999995, "met"},  // slack
                        {539.9, "inconclusive"},
                        {539.59, "inconclusive"},
                        {539.58, "not met"},
                        {100, "not met"}};
  for (const Case& c : cases) {
    CAPTURE(c.limit);
    std::ostringstream limit;
    limit.imbue(std::locale::classic());
    limit.precision(10);
    limit << c.limit;
    const Evaluated evaluated = plain(heat("above = 300\nrate_max = " + limit.str()) + hold());
    CHECK(evaluated.verdict("stage-1.heating-rate") == c.expected);
    CHECK(*evaluated["stage-1.heating-rate"].measured == close_to(540));
    CHECK(*evaluated["stage-1.heating-rate"].standard_error == close_to(four_se / 4, 1e-9));
  }
  // 0.2 °C/h above the limit, which noise may explain: nothing is claimed of an open verdict.
  CHECK_THAT(plain(heat("above = 300\nrate_max = 539.8") + hold()).short_of("stage-1.heating-rate"),
             Catch::StartsWith("TC1 may have heated 0.2 °C/h too fast: by "));
}

TEST_CASE("A rate tells its window, channel, margin, overall rates and the rates over other windows") {
  MadeRecord made = plain_record();
  made.course("TC2", {{0, 20}, {60, 500}, {66, 560}, {120, 560}, {180, 20}});  // 480 °C/h
  const Evaluated evaluated(made, heat("above = 300\nrate_max = 600") + hold());
  const Requirement& rate = evaluated["stage-1.heating-rate"];
  CHECK(rate.channel == "TC1");
  CHECK(*rate.margin == close_to(60));
  // 300 is at 31 min 6.7 s; the first sample with 7.5 min on either side above it is at 39 min.
  CHECK(*rate.at_s == 39 * 60);
  CHECK(*rate.from_s == 39 * 60 - 450);
  CHECK(*rate.to_s == 39 * 60 + 450);
  REQUIRE(rate.overall.size() == 2);
  CHECK(rate.overall[0].first == "TC1");
  CHECK(*rate.overall[0].second == close_to(540));
  CHECK(*rate.overall[1].second == close_to(480));
  const std::vector<RateAlternative>& rates = rate.alternatives.rates;
  REQUIRE(rates.size() == 5);
  CHECK(rates[0].window_minutes == 5);
  CHECK(*rates[1].rate_c_per_h == *rate.measured);
  CHECK(rates[3].window_minutes == 60);
  // From 300 to 500, where the hold begins, are 22 min.
  CHECK_FALSE(rates[2].rate_c_per_h);
  CHECK_FALSE(rates[3].rate_c_per_h);
}

TEST_CASE("Every fall is held to the cooling limit, also one before the hold is over") {
  // A dip of 20 K in 4 min in the hold: 300 °C/h for 4 min, less than that over 15 min.
  const MadeRecord dip = MadeRecord::every(60, 181).course(
      "TC1", {{0, 20}, {60, 560}, {80, 560}, {84, 540}, {88, 560}, {120, 560}, {180, 290}});
  const Evaluated evaluated(
      dip, "[evaluation]\nrate_window = \"4 min\"\n" + hold() + cool("above = 300\nrate_max = 280"));
  CHECK(*evaluated["stage-2.cooling-rate"].measured ==
        close_to(270, 1));  // 4 min are widened to 8: the ramp counts
  CHECK(evaluated.findings("stage-2.cooling-rate").front().kind == Finding::Kind::note);
  // 20 min of 540 °C/h in mid hold are more than the 270 of the way down.
  const MadeRecord fall = MadeRecord::every(60, 301).course(
      "TC1", {{0, 20}, {60, 560}, {80, 560}, {100, 380}, {120, 560}, {180, 560}, {240, 290}});
  // Between two holds as well: no other cool stage has that time.
  CHECK(Evaluated(fall, hold() + hold() + cool("above = 300\nrate_max = 280"))
            .verdict("stage-3.cooling-rate") == "not met");
  // In the hold period only what is below 500 is a fall: 13 min of it, for which a window of 10 min is short
  // enough.
  const Evaluated excursion(fall, "[evaluation]\nrate_window = \"10 min\"\n" +
                                      hold_500_600_with("time_min = \"10 min\"\ncount = \"accumulated\"") +
                                      cool("above = 300\nrate_max = 280"));
  CHECK(say(excursion.stage(1).in_range) == "3200..5200 6800..11600");
  CHECK(*excursion["stage-2.cooling-rate"].measured == close_to(540));
  CHECK(excursion.verdict("stage-2.cooling-rate") == "not met");
}

TEST_CASE("A limit by thickness is evaluated with the weld's thickness") {
  // 27,000 over 50 mm is 540, held within 55 and 600.
  const std::string rule =
      heat("above = 300\nrate_max = { over = 27000, per = \"mm\", at_least = 55, at_most = 600 }");
  CHECK(plain("thickness = \"50 mm\"\n" + rule + hold())["stage-1.heating-rate"].limit == close_to(540));
  CHECK(plain("thickness = \"50 mm\"\n" + rule + hold()).verdict("stage-1.heating-rate") == "met");
  CHECK(plain("thickness = \"60 mm\"\n" + rule + hold())["stage-1.heating-rate"].limit == close_to(450));
  CHECK(plain("thickness = \"10 mm\"\n" + rule + hold())["stage-1.heating-rate"].limit == close_to(600));
}

TEST_CASE("A part that is crossed unseen leaves the rate inconclusive unless it is already not met") {
  // 30 K a minute: 300 to 400 in 3 min 20 s, with 3 or 4 rows.
  const MadeRecord fast = MadeRecord::every(60, 61).course("TC1", {{0, 20}, {18, 560}, {50, 560}, {60, 560}});
  const Evaluated evaluated(fast, heat("above = 300\nbelow = 400\nrate_max = 1900") + hold());
  CHECK(evaluated.told("stage-1.heating-rate") == "none inconclusive");
  // A second, slow rise through it is measured; the fast one still is not seen.
  const MadeRecord both = MadeRecord::every(60, 201).course(
      "TC1", {{0, 20}, {18, 560}, {50, 560}, {77, 20}, {97, 220}, {181, 556}, {200, 556}});
  CHECK(Evaluated(both, heat("above = 300\nbelow = 400\nrate_max = 260")).verdict("stage-1.heating-rate") ==
        "inconclusive");
  CHECK(Evaluated(both, heat("above = 300\nbelow = 400\nrate_max = 200")).verdict("stage-1.heating-rate") ==
        "not met");
}

TEST_CASE("A rate that cannot be measured anywhere is inconclusive") {
  const MadeRecord cold = MadeRecord::every(60, 61).course("TC1", {{0, 20}, {60, 250}});
  CHECK(Evaluated(cold, heat("above = 300\nrate_max = 100")).told("stage-1.heating-rate") ==
        "none inconclusive");
}

TEST_CASE("A window too narrow for the log's interval is widened, and that is a note") {
  const MadeRecord sparse =
      MadeRecord::every(300, 109).course("TC1", {{0, 20}, {240, 560}, {300, 560}, {540, 20}});
  const Evaluated evaluated(
      sparse, "[evaluation]\ninterpolate_max = \"10 min\"\n" + heat("above = 300\nrate_max = 600") + hold());
  CHECK(evaluated.places("stage-1.heating-rate") == "note");
  CHECK(*evaluated["stage-1.heating-rate"].to_s - *evaluated["stage-1.heating-rate"].from_s ==
        close_to(2400));
}

// ---- smallest overall rate ----

TEST_CASE("rate_min is held against the smallest overall rate of the channels") {
  MadeRecord made = plain_record();
  made.course("TC2", {{0, 20}, {60, 500}, {66, 560}, {120, 560}, {180, 20}});  // 480 °C/h
  const auto evaluated = [&](const char* rate_min) {
    return Evaluated(made, heat("above = 300\nrate_min = " + std::string(rate_min)) + hold());
  };
  CHECK(evaluated("480").told("stage-1.heating-rate-min") == "480 met");
  CHECK(evaluated("481").told("stage-1.heating-rate-min") == "480 not met");
  CHECK(evaluated("481")["stage-1.heating-rate-min"].channel == "TC2");
  CHECK(*evaluated("400")["stage-1.heating-rate-min"].margin == close_to(80));
  CHECK(Evaluated(made, hold() + cool("above = 300\nrate_min = 500")).told("stage-2.cooling-rate-min") ==
        "540 met");
  const MadeRecord cold = MadeRecord::every(60, 61).course("TC1", {{0, 20}, {60, 450}});
  CHECK(Evaluated(cold, heat("above = 300\nrate_min = 100") + hold()).told("stage-1.heating-rate-min") ==
        "none inconclusive");
}

// ---- spread ----

TEST_CASE(
    "The spread of a heat stage counts while the hottest is at or above `above`, up to the hold's span") {
  // TC2 is 100 K behind at 250 °C and 40 K behind from 400 °C on.
  MadeRecord made = plain_record();
  made.course("TC2", {{0, 20}, {20, 100}, {40, 340}, {58, 502}, {64, 556}, {120, 556}, {180, 16}});
  const auto spread = [&](const char* keys) {
    return Evaluated(made, heat(keys) + hold())["stage-1.spread"];
  };
  // At 20 min TC1 is at 200 and TC2 at 100.
  CHECK(*spread("spread_max = 50").measured == close_to(100));
  CHECK(spread("spread_max = 50").verdict == Verdict::not_met);
  // From 300 (32 min: 308 against 244) on.
  CHECK(*spread("above = 300\nspread_max = 70").measured == close_to(64));
  CHECK(spread("above = 300\nspread_max = 70").verdict == Verdict::met);
  CHECK(*spread("above = 300\nspread_max = 70").at_s == 32 * 60);
  CHECK(*spread("above = 300\nspread_max = 70").margin == close_to(6));
  CHECK(spread("above = 300\nspread_max = 70").channel == "TC1");
  CHECK(spread("above = 300\nspread_max = 70").channel_2 == "TC2");
}

TEST_CASE("The spread of a cool stage counts from the end of the span before it") {
  MadeRecord made = plain_record();
  // 10 K apart in the hold, TC2 falling slower: 70 K behind TC1 at 300.
  made.course("TC2", {{0, 20}, {60, 550}, {120, 550}, {150, 360}, {180, 190}});
  const Evaluated evaluated(made, hold() + cool("above = 300\nspread_max = 50"));
  CHECK(evaluated.stage(2).start_s == evaluated.stage(1).start_s);
  CHECK(*evaluated["stage-2.spread"].at_s > 148 * 60);
  CHECK(evaluated.verdict("stage-2.spread") == "not met");
  CHECK(evaluated.places("stage-2.spread").find("not met TC2") == 0);
}

TEST_CASE("A spread within a length is that of neighbours along the work") {
  const MadeRecord made = MadeRecord::every(60, 61)
                              .course("TC1", {{0, 100}, {60, 500}})
                              .course("TC2", {{0, 140}, {60, 540}})
                              .course("TC3", {{0, 200}, {60, 600}})
                              .at("TC1", 0)
                              .at("TC2", 4.6)
                              .at("TC3", 9.2);
  const std::string job =
      "[[thermocouple]]\ncolumn = \"TC1\"\nposition = \"0 m\"\n[[thermocouple]]\ncolumn = \"TC2\"\nposition "
      "= \"4.6 m\"\n"
      "[[thermocouple]]\ncolumn = \"TC3\"\nposition = \"9.2 m\"\n";
  CHECK(*Evaluated(made, heat("spread_max = 150"), job)["stage-1.spread"].measured == close_to(100));
  CHECK(
      *Evaluated(made, heat("spread_max = 150\nspread_within = \"4.6 m\""), job)["stage-1.spread"].measured ==
      close_to(60));
  // No two are that close: there is nothing to require, and a note says so.
  const Evaluated apart(made, heat("spread_max = 150\nspread_within = \"4.5 m\"\nrate_max = 9000"), job);
  CHECK_FALSE(apart.has("stage-1.spread"));
  CHECK_THAT(apart.text(apart.findings("").back()), Catch::Contains("no two evaluated thermocouples"));
  // An evaluated channel without `position` is an error, said before evaluating.
  CHECK_FALSE(check_compatibility(procedure_of(heat("spread_max = 150\nspread_within = \"4.6 m\"")), nullptr)
                  .empty());
}

// ---- what a record cannot show ----

TEST_CASE(
    "What a record does not show leaves rate, overall rate and spread inconclusive unless already not met") {
  const std::string stage = heat("above = 300\nrate_max = 600\nrate_min = 100\nspread_max = 50");
  const std::string strict = heat("above = 300\nrate_max = 100\nspread_max = 1");
  const std::string slow = heat("above = 300\nrate_min = 600");
  struct Case {
    const char* what;
    MadeRecord made;
    const char* finding;
  };
  MadeRecord pair = plain_record();
  pair.course("TC2", {{0, 30}, {60, 570}, {120, 570}, {180, 30}});
  const std::vector<Case> cases = {
      // TC2's first reading is at 40 min: 390.
      {"a late thermocouple", MadeRecord(pair).missing("TC2", 0, 2340), "inconclusive TC2 2400..2400"},
      // No line of TC2 from 40 to 48 min.
      {"a hole", MadeRecord(pair).missing("TC2", 2460, 2820), "inconclusive TC2 2400..2880"},
  };
  for (const Case& c : cases) {
    CAPTURE(c.what);
    const Evaluated evaluated(c.made, stage + hold());
    CHECK(evaluated.verdict("stage-1.heating-rate") == "inconclusive");
    CHECK(evaluated.verdict("stage-1.heating-rate-min") == "inconclusive");
    CHECK(evaluated.verdict("stage-1.spread") == "inconclusive");
    CHECK(evaluated.places("stage-1.heating-rate") == c.finding);
    CHECK(evaluated.places("stage-1.spread") == c.finding);
    const Evaluated failed(c.made, strict + hold());
    CHECK(failed.verdict("stage-1.heating-rate") == "not met");
    CHECK(Evaluated(c.made, slow + hold()).verdict("stage-1.heating-rate-min") == "not met");
    CHECK(failed.verdict("stage-1.spread") == "not met");
  }
  const Evaluated whole(pair, stage + hold());
  CHECK(whole.verdict("stage-1.heating-rate") == "met");
  CHECK(whole.verdict("stage-1.heating-rate-min") == "met");
  CHECK(whole.verdict("stage-1.spread") == "met");
}

TEST_CASE("A record that ends while still hot leaves the cool stage inconclusive") {
  // Ends at 140 min at 380.
  const MadeRecord made = MadeRecord::every(60, 141).course("TC1", plain_run());
  const Evaluated evaluated(made, hold() + cool("above = 300\nrate_max = 600"));
  CHECK(evaluated.verdict("stage-2.cooling-rate") == "inconclusive");
  CHECK(evaluated.places("stage-2.cooling-rate") == "inconclusive TC1 8400..8400");
  CHECK(Evaluated(made, hold() + cool("above = 400\nrate_max = 600")).verdict("stage-2.cooling-rate") ==
        "met");
}

TEST_CASE("Stages are told with their times and what each channel did in them") {
  const Evaluated evaluated =
      plain(heat("above = 300\nrate_max = 600") + hold() + cool("above = 300\nrate_max = 600"));
  REQUIRE(evaluated.all.stages.size() == 3);
  CHECK(evaluated.stage(1).kind == "heat");
  CHECK(*evaluated.stage(1).start_s == 0);
  CHECK(*evaluated.stage(1).end_s == close_to(7600));
  CHECK(evaluated.stage(2).kind == "hold");
  CHECK(evaluated.stage(3).kind == "cool");
  CHECK(*evaluated.stage(3).start_s == close_to(3200));
  CHECK(*evaluated.stage(3).end_s == 10800);
  CHECK(*evaluated.stage(1).channels[0].max_c == close_to(560));
  CHECK(*evaluated.stage(1).channels[0].min_c == close_to(20));
}
