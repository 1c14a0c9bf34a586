// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/rates/rate.h"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

RampStage heat(std::optional<double> above = {}, std::optional<double> below = {}) {
  RampStage stage;
  stage.direction = RampStage::Direction::heat;
  if (above) stage.above = Temperature::of_celsius(*above);
  if (below) stage.below = Temperature::of_celsius(*below);
  return stage;
}
RampStage cool(std::optional<double> above = {}) {
  RampStage stage = heat(above);
  stage.direction = RampStage::Direction::cool;
  return stage;
}

constexpr double kQuarter_s = 900.0;

/// The rate of a stage that lasts as long as the record, or for `when`, in a record without a hold.
StageRate rate_of(const Traced& made, const RampStage& stage, double limit = 1e9,
                  double window_s = kQuarter_s, std::optional<Span> when = {}) {
  StageTime time;
  time.time = when.value_or(made.time());
  return stage_rate(made.record, row_ticks(made.record), made.set, made.group, {}, time,
                    {stage, window_s, 120.0, limit, nullptr});
}

std::string worst(const Traced& made, const StageRate& rate) {
  if (!rate.worst) return "none";
  std::string text = made.set.traces[rate.worst->trace].name;
  text += ' ';
  text += say(rate.worst->window.slope_c_per_h);
  text += " about ";
  text += say(rate.worst->window.at_s);
  return text;
}

std::optional<double> over_window(const StageRate& rate, std::size_t i) {
  const auto& worst = rate.by_window[i].worst;
  return worst ? std::optional{worst->window.slope_c_per_h} : std::nullopt;
}
std::string by_window(const StageRate& rate) {
  std::string text;
  for (std::size_t i = 0; i < rate.by_window.size(); ++i) {
    const auto one = over_window(rate, i);
    if (!text.empty()) text += ' ';
    text += say(one);
  }
  return text;
}

/// A row a minute along these corners.
Traced minutes(std::size_t rows, const Knots& knots) {
  return Traced(MadeRecord::every(60, rows).course("TC1", knots));
}

}  // namespace

// ---- the worst window ----

TEST_CASE("The rate of a stage is the largest slope over all windows and channels") {
  // TC1 rises 2 K a minute; TC2 1 K a minute, but 3 K a minute from 60 to 90 min.
  const Traced made(MadeRecord::every(60, 151)
                        .course("TC1", {{0, 20}, {150, 320}})
                        .course("TC2", {{0, 20}, {60, 80}, {90, 170}, {150, 230}}));
  // The first window of 15 min that lies wholly in 60…90 min is centred on 67 min (rows 60 to 74).
  const StageRate rate = rate_of(made, heat());
  CHECK(worst(made, rate) == "TC2 180 about 4020");
  CHECK(rate.worst->window.from_s == 4020 - 450);
  CHECK(rate.worst->window.to_s == 4020 + 450);
  CHECK(rate.worst->window.samples == 15);
  CHECK(rate.width_s == 900);
  CHECK_FALSE(rate.widened);
  CHECK(worst(made, rate_of(made, heat(), 1e9, 3600)).find("TC2") ==
        0);  // 90 K in the steepest hour and more
}

TEST_CASE("Of equal slopes the first in time is shown, then the first in the log's order") {
  const Traced made(
      MadeRecord::every(60, 61).course("TC1", {{0, 20}, {60, 140}}).course("TC2", {{0, 30}, {60, 150}}));
  CHECK(worst(made, rate_of(made, heat())) == "TC1 120 about 480");  // 7.5 min from the start: 8 min
}

TEST_CASE("A fall has a cooling rate and no heating rate of its own") {
  const Traced made = minutes(61, {{0, 320}, {60, 200}});
  CHECK(worst(made, rate_of(made, cool())) == "TC1 120 about 480");
  CHECK(worst(made, rate_of(made, heat())) == "TC1 -120 about 480");
}

TEST_CASE("Every rise in a heat stage is held to the limit, not only the planned one") {
  // 1 K a minute to 160, a fall of 60 K, and up again at 4 K a minute.
  const Traced made = minutes(241, {{0, 40}, {120, 160}, {150, 100}, {180, 220}, {240, 280}});
  CHECK(rate_of(made, heat()).worst->window.slope_c_per_h == close_to(240));
}

// ---- where it is evaluated ----

TEST_CASE("A rate is evaluated at and above `above` and at and below `below` only") {
  // 10 K a minute to 300 at 28 min, 2 K a minute to 500 at 128 min, then 10 K a minute.
  const Traced made = minutes(140, {{0, 20}, {28, 300}, {128, 500}, {139, 610}});
  CHECK(rate_of(made, heat()).worst->window.slope_c_per_h > 590);
  CHECK(rate_of(made, heat(300)).worst->window.slope_c_per_h > 400);
  CHECK(rate_of(made, heat(300, 500)).worst->window.slope_c_per_h == close_to(120));
  CHECK(rate_of(made, heat(300, 500)).worst->window.at_s == 28 * 60 + 480);
  // From 285 (26.5 min) on a window about 34 min has a row of the fast rise in it.
  CHECK(rate_of(made, heat(285, 500)).worst->window.slope_c_per_h > 121);
  // The stage's own time cuts the record in the same way.
  CHECK(rate_of(made, heat(), 1e9, kQuarter_s, Span{28 * 60, 128 * 60}).worst->window.slope_c_per_h ==
        close_to(120));
}

TEST_CASE("No window reaches across a hole longer than the interpolate_max") {
  // 2 K a minute; 60 K more in a hole from 30 to 40 min. Windows of half an hour reach across it.
  Knots jump = {{0, 20}, {30, 80}, {40, 160}, {90, 260}};
  const Traced made(MadeRecord::every(60, 91).course("TC1", jump).missing("TC1", 31 * 60, 39 * 60), 120);
  CHECK(rate_of(made, heat(), 1e9, 1800).worst->window.slope_c_per_h == close_to(120));
  const Traced interpolated(MadeRecord::every(60, 91).course("TC1", jump).missing("TC1", 31 * 60, 39 * 60),
                            600);
  CHECK(rate_of(interpolated, heat(), 1e9, 1800).worst->window.slope_c_per_h > 200);
}

TEST_CASE("No window joins a channel and the spare that took over") {
  // Both rise 2 K a minute, the spare 60 K above its channel, which ends at 45 min.
  const Traced made(MadeRecord::every(60, 91)
                        .course("TC1", {{0, 20}, {90, 200}})
                        .course("TC9", {{0, 80}, {90, 260}})
                        .missing("TC1", 46 * 60, 90 * 60)
                        .spare("TC9", "TC1"));
  REQUIRE(made.set.take_overs.size() == 1);
  CHECK(rate_of(made, heat()).worst->window.slope_c_per_h == close_to(120));
  CHECK(by_window(rate_of(made, heat())) == "120 120 120 none");  // 45 min on either side
}

TEST_CASE("A clock fault and a time_range excluded end windows, too") {
  const Knots jump = {{0, 20}, {44, 108}, {45, 200}, {90, 290}};
  CHECK(rate_of(Traced(MadeRecord::every(60, 91).course("TC1", jump)), heat()).worst->window.slope_c_per_h >
        300);
  CHECK(rate_of(Traced(MadeRecord::every(60, 91).course("TC1", jump).broken_after(44)), heat())
            .worst->window.slope_c_per_h == close_to(120));
  CHECK(rate_of(Traced(MadeRecord::every(60, 91).course("TC1", jump).exclusion("TC1", 44.2 * 60, 44.8 * 60)),
                heat())
            .worst->window.slope_c_per_h == close_to(120));
}

// ---- parts that are too short ----

TEST_CASE("A part in which no window lies is one window, if it has five samples") {
  // 10 K a minute: from 300 (28 min) to 400 (38 min) are 10 min and 11 rows.
  const Traced made = minutes(61, {{0, 20}, {60, 620}});
  const StageRate rate = rate_of(made, heat(300, 400));
  REQUIRE(rate.worst);
  CHECK(rate.worst->window.slope_c_per_h == close_to(600));
  CHECK(rate.worst->window.samples == 11);
  CHECK(rate.worst->window.from_s == close_to(28 * 60));
  CHECK(rate.worst->window.to_s == close_to(38 * 60));
  CHECK(rate.crossed_unseen.empty());
  // It is no window of 5 min only: those are measured as they are, and longer ones are not there.
  CHECK(by_window(rate) == "600 none none none");
}

TEST_CASE("A short part beside one with windows is a window of its own") {
  // 5 K a minute from 300 to 350 (10 min), down again, and 1 K a minute for an hour.
  const Traced made =
      minutes(121, {{0, 290}, {2, 300}, {12, 350}, {22, 300}, {24, 290}, {34, 300}, {120, 386}});
  const StageRate rate = rate_of(made, heat(345));
  // 345…350…345 from 11 to 13 min: 3 rows, too few; it is not evaluated. 345 again at 79 min.
  CHECK(rate.worst->window.slope_c_per_h == close_to(60));
  // From 300 on the first part is 2…22 min: windows of 15 min lie in it.
  CHECK(rate_of(made, heat(300)).worst->window.at_s < 22 * 60);
  // From 320 (6 min) to 320 (18 min) it is 12 min, one window, up and down: no rise on the whole.
  const StageRate level = rate_of(made, heat(320, 351), 1e9);
  CHECK(level.worst->window.slope_c_per_h == close_to(60));
}

TEST_CASE("A part that runs from one level to the other with too few samples is not seen") {
  struct Case {
    const char* what;
    Knots knots;
    std::size_t unseen;
  };
  const std::vector<Case> cases = {
      {"30 K a minute: 300 to 400 in 3 min 20 s, 4 rows", {{0, 20}, {20, 620}}, 1},
      {"the same downwards", {{0, 620}, {20, 20}}, 1},
      {"20 K a minute: 5 min, 6 rows", {{0, 20}, {20, 420}}, 0},
      {"in and out by the same level", {{0, 280}, {2, 320}, {4, 280}, {20, 280}}, 0},
      {"up to the end of the record only", {{0, 290}, {18, 290}, {20, 350}}, 0},
  };
  for (const Case& c : cases) {
    CAPTURE(c.what);
    const Traced made = minutes(21, c.knots);
    CHECK(rate_of(made, heat(300, 400)).crossed_unseen.size() == c.unseen);
  }
}

TEST_CASE("Nothing is measured where no part has five samples") {
  CHECK_FALSE(rate_of(minutes(4, {{0, 20}, {3, 50}}), heat()).worst);
  CHECK(rate_of(minutes(5, {{0, 20}, {4, 60}}), heat()).worst->window.slope_c_per_h == close_to(600));
  CHECK_FALSE(rate_of(minutes(60, {{0, 20}, {60, 80}}), heat(300)).worst);
}

// ---- width ----

TEST_CASE("The window is no narrower than eight intervals of the log") {
  struct Case {
    double interval_s;
    double width_s;
    bool widened;
  };
  const Case cases[] = {{20, 900, false}, {112.5, 900, false}, {120, 960, true}, {300, 2400, true}};
  for (const Case& c : cases) {
    CAPTURE(c.interval_s);
    const Traced made(MadeRecord::every(c.interval_s, 100).course("TC1", {{0, 20}, {1000, 1020}}), 1000);
    const StageRate rate = rate_of(made, heat());
    CHECK(rate.width_s == c.width_s);
    CHECK(rate.widened == c.widened);
    if (c.widened) CHECK(rate.worst->window.samples == 9);
  }
}

TEST_CASE("The rates for 5, 15, 30 and 60 min are for exactly these widths") {
  // 1 K a minute but 2 K a minute from 60 to 80 min: 20 K more. Rows a minute apart.
  const Knots knots = {{0, 20}, {60, 80}, {80, 120}, {200, 240}};
  const StageRate rate = rate_of(minutes(201, knots), heat());
  CHECK(*over_window(rate, 0) == close_to(120));
  CHECK(*over_window(rate, 1) == close_to(120));
  CHECK(*over_window(rate, 2) > 100);
  CHECK(*over_window(rate, 2) < 120);
  CHECK(*over_window(rate, 3) > 60);
  CHECK(*over_window(rate, 3) < *over_window(rate, 2));
  // A log every 2 min has three samples in 5 min: not measured, and not widened.
  const Traced sparse(MadeRecord::every(120, 101).course("TC1", knots), 240);
  const StageRate widened = rate_of(sparse, heat());
  CHECK(widened.widened);  // 16 min
  CHECK_FALSE(over_window(widened, 0));
  CHECK(*over_window(widened, 1) == close_to(120));
  // 59 min of record: no hour in it.
  CHECK(by_window(rate_of(minutes(60, {{0, 20}, {59, 79}}), heat())) == "60 60 60 none");
}

// ---- noise and standard error ----

TEST_CASE("The noise is that of the middle readings about the lines between their neighbours") {
  SECTION("even steps: d²/1.5") {
    // 10.0 and 10.3 in turn: every d is 0.3, e = 0.09 / 1.5 = 0.06, s² = 0.06 / 0.4549.
    std::vector<double> values;
    for (int row = 0; row < 40; ++row) values.push_back(row % 2 == 0 ? 10.0 : 10.3);
    const Traced made(MadeRecord::every(60, 40).column("TC1", values));
    CHECK(rate_of(made, heat()).noise_k[0] == close_to(std::sqrt(0.06 / 0.4549), 1e-12));
  }
  SECTION("uneven steps: d²/(1 + w² + (1 − w)²)") {
    // Steps of 60 and 120 s in turn; 0 and 1 in turn. With w = 1/3 or 2/3 the divisor is 1 + 1/9 + 4/9 =
    // 14/9, and d is ±1: e = 9/14.
    std::vector<double> times{0};
    std::vector<double> values{0};
    for (int row = 1; row < 41; ++row) {
      times.push_back(times.back() + (row % 2 == 1 ? 60 : 120));
      values.push_back(row % 2);
    }
    const Traced made(MadeRecord(times).column("TC1", values));
    CHECK(rate_of(made, heat()).noise_k[0] == close_to(std::sqrt(9.0 / 14.0 / 0.4549), 1e-12));
  }
  SECTION("a straight ramp has none but that of the last digit, q²/12") {
    struct Case {
      int decimals;
      TemperatureUnit unit;
      double q_k;
    };
    const Case cases[] = {{1, TemperatureUnit::celsius, 0.1},
                          {0, TemperatureUnit::celsius, 1.0},
                          {2, TemperatureUnit::celsius, 0.01},
                          {0, TemperatureUnit::fahrenheit, 5.0 / 9.0}};
    for (const Case& c : cases) {
      CAPTURE(c.decimals, c.q_k);
      std::vector<double> values;
      for (int row = 0; row < 40; ++row) values.push_back(100 + 2 * row);
      const Traced made(MadeRecord::every(60, 40).column("TC1", values, c.decimals, c.unit));
      CHECK(rate_of(made, heat()).noise_k[0] == close_to(c.q_k / std::sqrt(12.0), 1e-12));
    }
  }
}

TEST_CASE("Noise counts only where the rate is evaluated, and no triple reaches from part to part") {
  // 10.0 and 10.3 in turn below 100 (e = 0.06, most of all triples), then a step and a straight ramp.
  std::vector<double> values;
  for (int row = 0; row < 90; ++row) values.push_back(row % 2 == 0 ? 10.0 : 10.3);
  for (int row = 0; row < 40; ++row) values.push_back(100 + 2 * row);
  const auto noise_of = [&](double above) {
    return rate_of(Traced(MadeRecord::every(60, values.size()).column("TC1", values)), heat(above))
        .noise_k[0];
  };
  CHECK(noise_of(5) == close_to(std::sqrt(0.06 / 0.4549), 1e-12));
  CHECK(noise_of(100) == close_to(0.1 / std::sqrt(12.0), 1e-12));
  // Two straight pieces of six readings with a jump across a hole: eight triples, whose mean is 0; a triple
  // across the hole would have made it large.
  std::vector<double> pieces;
  for (int row = 0; row < 6; ++row) pieces.push_back(100 + 2 * row);
  for (int row = 0; row < 5; ++row) pieces.push_back(kNoReading);
  for (int row = 0; row < 6; ++row) pieces.push_back(400 + 2 * row);
  const Traced holed(MadeRecord::every(60, pieces.size()).column("TC1", pieces));
  CHECK(rate_of(holed, heat(100)).noise_k[0] == close_to(0.1 / std::sqrt(12.0), 1e-12));
}

TEST_CASE("A window's own noise counts where it is larger than the channel's, a spike elsewhere does not") {
  // Straight at 2 K a minute but for 20 rows of a zigzag of 1 K: its triples have d = 1, e = 2/3. One reading
  // is 40 K high. Windows of 30 min have 31 rows, 29 triples.
  std::vector<double> values;
  for (int row = 0; row < 200; ++row) {
    const bool rough = row >= 100 && row < 131;
    values.push_back(100 + 2 * row + (rough && row % 2 == 1 ? 1.0 : 0.0) + (row == 30 ? 40.0 : 0.0));
  }
  const Traced made(MadeRecord::every(60, values.size()).column("TC1", values));
  const auto window_at = [&](double from_min, double to_min) {
    return rate_of(made, heat(), 1e9, 1800, Span{from_min * 60, to_min * 60}).worst;
  };
  // The stage is the window: the channel's level is that of its 29 triples.
  CHECK(window_at(60, 90)->standard_error * window_at(60, 90)->window.root_sxx_h ==
        close_to(0.1 / std::sqrt(12.0), 1e-9));
  CHECK(window_at(100, 130)->standard_error * window_at(100, 130)->window.root_sxx_h ==
        close_to(std::sqrt(2.0 / 3.0 / 0.4549), 1e-9));
  // In the whole record most triples are straight, yet a window in the rough rows has their noise. Its slope
  // is made the steepest by a rise of 10 K a minute there.
  std::vector<double> steep = values;
  for (int row = 100; row < 200; ++row) steep[static_cast<std::size_t>(row)] += 8.0 * std::min(row - 100, 30);
  const Traced all(MadeRecord::every(60, steep.size()).column("TC1", steep));
  const auto worst = rate_of(all, heat(), 1e9, 1800).worst;
  REQUIRE(worst->window.at_s == 115 * 60);
  CHECK(worst->standard_error * worst->window.root_sxx_h == close_to(std::sqrt(2.0 / 3.0 / 0.4549), 1e-9));
  CHECK(rate_of(all, heat(), 1e9, 1800).noise_k[0] == close_to(0.1 / std::sqrt(12.0), 1e-12));
}

TEST_CASE("The standard error of a slope is the noise over the root of Sxx") {
  // 10.0 and 10.3 in turn, a row a minute, 15 min: 15 rows. SE = s/Δt·√(12/(n(n² − 1))), s² = 0.06 / 0.4549.
  std::vector<double> values;
  for (int row = 0; row < 40; ++row) values.push_back(row % 2 == 0 ? 10.0 : 10.3);
  const Traced made(MadeRecord::every(60, 40).column("TC1", values));
  const double closed = std::sqrt(0.06 / 0.4549) * 60.0 * std::sqrt(12.0 / (15.0 * 224.0));
  CHECK(rate_of(made, heat()).worst->standard_error == close_to(closed, 1e-12));
}

// ---- beyond the limit ----

TEST_CASE("Windows beyond the limit make places, and four standard errors make them certain") {
  // 120 °C/h from 40 to 70 min, else 60. The corners do not count as noise: s is that of the last digit,
  // q/√12. Windows have 15 rows, a minute apart.
  const Traced made = minutes(121, {{0, 20}, {40, 60}, {70, 120}, {120, 170}});
  const double four_se = 4 * (0.1 / std::sqrt(12.0)) * 60.0 * std::sqrt(12.0 / (15.0 * 224.0));
  REQUIRE(four_se == close_to(0.414, 0.0005));
  SECTION("at the limit there is none") {
    CHECK(rate_of(made, heat(), 120).places.empty());
    CHECK(rate_of(made, heat(), 120 - 5e-7).places.empty());  // slack
  }
  SECTION("less than 4 standard errors beyond it") {
    const StageRate rate = rate_of(made, heat(), 119.6);
    REQUIRE(rate.places.size() == 1);
    CHECK_FALSE(rate.places[0].certain);
    CHECK(rate.places[0].steepest.window.slope_c_per_h == close_to(120));
  }
  SECTION("more than 4 standard errors beyond it") {
    const StageRate rate = rate_of(made, heat(), 119.5);
    REQUIRE(rate.places.size() == 1);
    CHECK(rate.places[0].certain);
    // All windows within 40…70 min are beyond: from 39.5 min to 70.5 min at the least.
    CHECK(rate.places[0].time.first <= 40 * 60);
    CHECK(rate.places[0].time.second >= 70 * 60);
  }
}

TEST_CASE("A spike makes no window certain, however steep it is with it") {
  // 60 °C/h with a limit of 100; one reading of 15 in a window 40 K high. SE is that of the last digit: the
  // slope is far beyond the limit with the spike, and without a tenth of the readings (one) it is not.
  std::vector<double> values;
  for (int row = 0; row < 61; ++row) values.push_back(100 + row + (row == 30 ? 40 : 0));
  const StageRate rate = rate_of(Traced(MadeRecord::every(60, 61).column("TC1", values)), heat(), 100);
  REQUIRE(rate.places.size() == 1);
  CHECK(rate.places[0].steepest.window.slope_c_per_h - 4 * rate.places[0].steepest.standard_error > 100);
  CHECK_FALSE(rate.places[0].certain);
}

TEST_CASE("Where a spike makes the steepest window, another may still be certain, and is told") {
  // 90 °C/h with a limit of 120, a spike of 40 K at 30 min (a window that ends or begins there: 150), and 132
  // °C/h from 36 to 66 min.
  std::vector<double> values;
  for (int row = 0; row < 101; ++row)
    values.push_back(100 + 1.5 * row + 0.7 * std::clamp(row - 36, 0, 30) + (row == 30 ? 40 : 0));
  const StageRate rate = rate_of(Traced(MadeRecord::every(60, 101).column("TC1", values)), heat(), 120);
  REQUIRE(rate.places.size() == 1);
  REQUIRE(rate.places[0].certain);
  CHECK(rate.worst->window.at_s < 40 * 60);
  CHECK(rate.worst->window.slope_c_per_h == close_to(150));
  CHECK(rate.places[0].certain->window.slope_c_per_h == close_to(132));
}

TEST_CASE("Excursions apart from each other are places of their own") {
  const Traced made = minutes(301, {{0, 20}, {40, 60}, {70, 120}, {200, 250}, {230, 310}, {300, 380}});
  const StageRate rate = rate_of(made, heat(), 100);
  REQUIRE(rate.places.size() == 2);
  CHECK(rate.places[0].time.second < rate.places[1].time.first);
  CHECK(rate.places[0].certain);
  CHECK(rate.places[1].certain);
}

TEST_CASE("Behind a take-over windows are measured though the first of them lacks its first reading") {
  // TC1 is lost after 20 min; its spare rises 5 K a minute from 20 to 40 min. The reading at 20 min is TC1's,
  // so the windows that begin there have one reading less than the even grid.
  const Traced made(MadeRecord::every(60, 61)
                        .course("TC1", {{0, 20}, {60, 80}})
                        .course("TC9", {{0, 20}, {20, 40}, {40, 140}, {60, 160}})
                        .missing("TC1", 21 * 60, 3600)
                        .spare("TC9", "TC1"));
  REQUIRE(made.group.size() == 1);
  const StageRate rate = rate_of(made, heat());
  REQUIRE(rate.worst);
  CHECK(rate.worst->window.slope_c_per_h == Approx(300.0));
  CHECK(*over_window(rate, 0) == Approx(300.0));
}
