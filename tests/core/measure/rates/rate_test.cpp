// SPDX-License-Identifier: GPL-3.0-or-later
// The rate of a stage: its steepest window, where it is evaluated, and how wide a window is.
#include "core/measure/rates/rate.h"

#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/measure/rates/stage_rates.h"

using namespace soakwright;

namespace {

std::string worst(const Traced& made, const StageRate& rate) {
  if (!rate.worst) return "none";
  std::string text = made.set.traces[rate.worst->trace].name;
  text += ' ';
  text += say(rate.worst->window.slope_c_per_h);
  text += " about ";
  text += say(rate.worst->window.at_s);
  return text;
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

}  // namespace

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
