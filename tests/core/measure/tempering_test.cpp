// SPDX-License-Identifier: GPL-3.0-or-later
// The tempering parameter against worked and published figures.
#include "core/measure/tempering.h"

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

std::optional<Tempering> tempering_of(const Traced& made, std::size_t trace = 0) {
  return temperings_of(made.set.traces, made.time(), kTemperingConstant).at(trace);
}

/// P of a course sampled every `step_s`, over its whole time, with a thousandth of a degree.
double parameter_of(const Knots& knots, double step_s = 60) {
  const auto rows = static_cast<std::size_t>(std::lround(knots.back().first * 60.0 / step_s)) + 1;
  const Traced made(MadeRecord::every(step_s, rows).course("TC1", knots, 3), 1e9);
  return tempering_of(made)->parameter;
}

/// Level at a temperature for so many hours.
Knots level(double celsius, double hours) { return {{0, celsius}, {hours * 60.0, celsius}}; }

double hours_worth(double parameter, double celsius) {
  return equivalent_hours(parameter, celsius, kTemperingConstant);
}

}  // namespace

TEST_CASE("At one temperature P is T(20 + log10 t)/1000") {
  // Worked from the formula of Hollomon and Jaffe (Trans. AIME 162, 1945; C = 20 as EN 13445-4:2021 uses it).
  struct Case {
    double celsius, hours, parameter;
  };
  const Case cases[] = {{595, 1, 17.363}, {600, 1, 17.463}, {620, 1, 17.863},
                        {650, 2, 18.741}, {690, 1, 19.263}, {720, 2, 20.162}};
  for (const Case& c : cases) {
    CAPTURE(c.celsius);
    CHECK(parameter_of(level(c.celsius, c.hours)) == close_to(c.parameter, 0.0005));
    CHECK(parameter_of(level(c.celsius, c.hours), 1) == close_to(c.parameter, 0.0005));
    CHECK(hours_worth(parameter_of(level(c.celsius, c.hours)), c.celsius) == close_to(c.hours, 1e-9));
  }
  // Exactly: 873.15 · 20 = 17,463.
  CHECK(parameter_of(level(600, 1)) == close_to(17.463, 1e-12));
}

TEST_CASE("500 °C for 1000 h is worth 138 h at 530 °C") {
  // Published example of the time-temperature equivalence: log10 t = (T/T_r)(20 + log10 1000) − 20.
  CHECK(hours_worth(parameter_of(level(500, 1000), 3600), 530) == close_to(138, 0.5));
}

TEST_CASE("A heating ramp is worth so many hours at its end, carried along") {
  // Worked from the formula by fine steps: to 600 °C at 50 °C/h 0.379 h, at 100 0.192 h; 620 at 55 0.353 h;
  // 720 at 150 0.147 h.
  struct Case {
    double celsius, rate, hours;
  };
  const Case cases[] = {{600, 50, 0.379}, {600, 100, 0.192}, {620, 55, 0.353}, {720, 150, 0.147}};
  for (const Case& c : cases) {
    CAPTURE(c.celsius, c.rate);
    const Knots ramp = {{0, 20}, {(c.celsius - 20) / c.rate * 60.0, c.celsius}};
    CHECK(hours_worth(parameter_of(ramp, 1), c.celsius) == close_to(c.hours, 0.0006));
    // The approximation t ≈ T/(2.3 K (20 − log10 K)), T in kelvin, is some 9 % above carrying along.
    const double approximate = (c.celsius + 273.15) / (2.3 * c.rate * (20 - std::log10(c.rate)));
    CHECK(approximate / hours_worth(parameter_of(ramp, 1), c.celsius) == Approx(1.09).margin(0.03));
  }
}

TEST_CASE("Three treatments of one weld, carried along: 21 323.8 and 21 399.5") {
  // Published figures for 730 °C/4 h + 675 °C/40 h + 710 °C/32 h (21 333 there, method and zero not stated;
  // carried along with 273.15: 21 323.8) and 750/3 + 670/50 + 710/32 (21 418; carried along 21 399.5). The
  // steps between them are one row of a second, so that they weigh nothing.
  const auto steps = [](const std::vector<std::pair<double, double>>& treatments) {
    std::vector<double> times{0};
    std::vector<double> values{treatments.front().first};
    for (const auto& [celsius, hours] : treatments) {
      if (values.back() != celsius) {
        times.push_back(times.back() + 0.001);
        values.push_back(celsius);
      }
      double left_s = hours * 3600.0;
      while (left_s > 0.5) {
        times.push_back(times.back() + 60.0);
        values.push_back(celsius);
        left_s -= 60.0;
      }
    }
    const Traced made(MadeRecord(times).column("TC1", values), 1e9);
    return 1000.0 * tempering_of(made)->parameter;
  };
  CHECK(steps({{730, 4}, {675, 40}, {710, 32}}) == close_to(21323.8, 0.1));
  CHECK(steps({{750, 3}, {670, 50}, {710, 32}}) == close_to(21399.5, 0.1));
  // Carrying along depends on the order.
  CHECK(std::fabs(steps({{710, 32}, {675, 40}, {730, 4}}) - 21323.8) > 1.0);
}

TEST_CASE("Cold time changes nothing") {
  const double hot = parameter_of(level(620, 1));
  CHECK(parameter_of({{0, 620}, {60, 620}, {60.5, 20}, {600, 20}}) == close_to(hot, 0.01));
}

TEST_CASE("Cutting a record into finer rows does not change P of a level hold") {
  for (const double step : {1.0, 10.0, 60.0, 300.0, 3600.0}) {
    CAPTURE(step);
    CHECK(parameter_of(level(650, 2), step) == close_to(923.15 * (20 + std::log10(2.0)) / 1000, 1e-9));
  }
}

TEST_CASE("Each thermocouple of a record has the P that it has alone") {
  // Nine of unlike courses, one with a hole, one excluded from the start.
  MadeRecord together = MadeRecord::every(60, 241);
  std::vector<double> alone;
  for (int i = 0; i < 9; ++i) {
    const Knots course{{10.0 * i, 20}, {60 + 10.0 * i, 560 + 10.0 * i}, {180, 600}, {240, 20 + 40.0 * i}};
    const std::string name = "TC" + std::to_string(i + 1);
    MadeRecord one = MadeRecord::every(60, 241).course("TC1", course);
    together.course(name, course);
    if (i == 6) {
      together.missing(name, 6000, 7200);
      one.missing("TC1", 6000, 7200);
    }
    if (i == 5) {
      together.exclusion(name, 0, 5000);
      one.exclusion("TC1", 0, 5000);
    }
    alone.push_back(tempering_of(Traced(one))->parameter);
  }
  const Traced made(together);
  for (std::size_t i = 0; i < 9; ++i) CHECK(tempering_of(made, i)->parameter == alone[i]);
}

TEST_CASE("Only known time adds, and how much is unknown is told") {
  // 2 h at 620, the second hour without readings.
  const Traced made(
      MadeRecord::every(60, 121).column("TC1", std::vector<double>(121, 620)).missing("TC1", 3601, 7199),
      120);
  const auto tempering = tempering_of(made);
  CHECK(tempering->parameter == close_to(17.863, 0.0005));
  CHECK(tempering->unknown_s == close_to(3600));
  const Traced exclusion(
      MadeRecord::every(60, 121).column("TC1", std::vector<double>(121, 620)).exclusion("TC1", 3601, 7200));
  CHECK(tempering_of(exclusion)->parameter == close_to(17.863, 0.0005));
  CHECK(tempering_of(exclusion)->unknown_s == close_to(0));
  const Traced nothing(MadeRecord::every(60, 2).column("TC1", {kNoReading, kNoReading}));
  CHECK_FALSE(tempering_of(nothing));
}

TEST_CASE("The hours worth the same elsewhere are found back") {
  for (const double celsius : {500.0, 595.0, 720.0})
    for (const double hours : {0.1, 1.0, 10.0}) {
      const double p = (celsius + 273.15) * (20 + std::log10(hours)) / 1000;
      CHECK(equivalent_hours(p, celsius, kTemperingConstant) == close_to(hours, 1e-9));
    }
}

TEST_CASE("Three treatments of one weld, each referred to one temperature and added: 21 333 and 21 418") {
  // Published figures, method and zero not stated there; referred to the hottest hold and added they come to
  // 21 335.1 and 21 420.3 with 273.15, so they are checked to 5 units.
  const std::vector<LevelHold> first{{730, 4}, {675, 40}, {710, 32}};
  const std::vector<LevelHold> second{{750, 3}, {670, 50}, {710, 32}};
  CHECK(1000 * *referred_sum(first, 730, kTemperingConstant) == close_to(21333, 5));
  CHECK(1000 * *referred_sum(first, 730, kTemperingConstant) == close_to(21335.1, 0.05));
  CHECK(1000 * *referred_sum(second, 750, kTemperingConstant) == close_to(21418, 5));
  CHECK(1000 * *referred_sum(second, 750, kTemperingConstant) == close_to(21420.3, 0.05));
  // Carried along in their order they come to less; the order counts, that of the sum does not.
  CHECK(1000 * *carried_along(first, kTemperingConstant) == close_to(21323.8, 0.1));
  CHECK(1000 * *carried_along(second, kTemperingConstant) == close_to(21399.5, 0.1));
  const std::vector<LevelHold> turned{{710, 32}, {675, 40}, {730, 4}};
  CHECK(*referred_sum(turned, 730, kTemperingConstant) ==
        close_to(*referred_sum(first, 730, kTemperingConstant), 1e-12));
  CHECK_FALSE(referred_sum({}, 730, kTemperingConstant));
  CHECK_FALSE(carried_along({}, kTemperingConstant));
}

TEST_CASE("Another constant is carried along as it is: T(C + log10 t)/1000") {
  // Worked from the formula.
  for (const double constant : {10.0, 18.5, 20.0, 30.0}) {
    CAPTURE(constant);
    const Traced made(MadeRecord::every(60, 121).column("TC1", std::vector<double>(121, 620)), 120);
    const auto tempering = temperings_of(made.set.traces, made.time(), constant).at(0);
    CHECK(tempering->parameter == close_to(893.15 * (constant + std::log10(2.0)) / 1000, 1e-9));
    CHECK(equivalent_hours(tempering->parameter, 620, constant) == close_to(2, 1e-9));
    CHECK(parameter_of(620, 2, constant) == close_to(tempering->parameter, 1e-9));
    const CurvePart part{&made.set.traces[0], made.time(), nullptr};
    CHECK(tempering_over({part}, 0.0, constant)->parameter == close_to(tempering->parameter, 1e-9));
    // The second of two such records passes what one and a half hours are worth after an hour and a half less
    // the two of the first: at its first step.
    CHECK(*tempering_passes({part, part}, parameter_of(620, 1.5, constant), constant) == close_to(60));
    CHECK(*tempering_passes({part, part}, parameter_of(620, 3.0, constant) + 1e-9, constant) ==
          close_to(3660));
    CHECK_FALSE(tempering_passes({part, part}, parameter_of(620, 4.1, constant), constant));
  }
}

TEST_CASE("Excluded time is not known time") {
  const Traced made(
      MadeRecord::every(60, 121).column("TC1", std::vector<double>(121, 620)).exclusion("TC1", 3601, 7200));
  // From the reading before it to the end of the record.
  CHECK(time_not_known(made.set.traces[0], made.time()) == close_to(3600));
}
