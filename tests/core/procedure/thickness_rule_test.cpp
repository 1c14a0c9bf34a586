// SPDX-License-Identifier: GPL-3.0-or-later
// Thickness rules against the worked figures of published codes.
#include "core/procedure/thickness_rule.h"

#include <catch2/catch.hpp>

#include "core/procedure/procedure.h"

using namespace soakwright;

namespace {

constexpr TemperatureUnit kF = TemperatureUnit::fahrenheit;
constexpr TemperatureUnit kC = TemperatureUnit::celsius;
constexpr LengthUnit kInch = LengthUnit::inch;
constexpr LengthUnit kMm = LengthUnit::millimetre;

HeatingRate fahrenheit_per_hour(double rate) { return HeatingRate::of(rate, kF); }
HeatingRate celsius_per_hour(double rate) { return HeatingRate::of(rate, kC); }
double minutes(double count) { return count * 60.0; }

}  // namespace

TEST_CASE("the rates of UCS-56 come out in F/h at every worked thickness") {
  // ASME BPVC VIII-1 UCS-56(d): 400 (heating) and 500 F/h (cooling) divided by the thickness in inches, at
  // most 400 and 500, need not be below 100. Figures worked from that text.
  const RateRule heating{fahrenheit_per_hour(400), kInch, fahrenheit_per_hour(100), fahrenheit_per_hour(400)};
  const RateRule cooling{fahrenheit_per_hour(500), kInch, fahrenheit_per_hour(100), fahrenheit_per_hour(500)};
  struct Row {
    double inches, heating, cooling;
  };
  for (const Row row :
       {Row{0.5, 400, 500}, Row{1, 400, 500}, Row{2, 200, 250}, Row{4, 100, 125}, Row{5, 100, 100}}) {
    const Thickness thickness = Thickness::of(row.inches, kInch);
    CHECK(heating.at(thickness).in(kF) == Approx(row.heating).epsilon(1e-12));
    CHECK(cooling.at(thickness).in(kF) == Approx(row.cooling).epsilon(1e-12));
  }
}

TEST_CASE("a rate of 600 F/h is an interval of 333.3 C/h, not a point of 315.6") {
  // ASME B31.1 132.5: 600 F/h divided by half the thickness in inches, at most 600 F/h: 1200 over the
  // thickness.
  const RateRule rule{fahrenheit_per_hour(1200), kInch, std::nullopt, fahrenheit_per_hour(600)};
  CHECK(rule.at(Thickness::of(1, kInch)).celsius_per_hour() == Approx(333.3333333333).epsilon(1e-12));
  CHECK(rule.at(Thickness::of(4, kInch)).in(kF) == Approx(300).epsilon(1e-12));
}

TEST_CASE("the rates of EN 13445-4 come out in C/h") {
  // EN 13445-4, PD 5500 (from memory): heating 220 C/h to 25 mm, then 5500/t, at least 55; cooling 275,
  // 6875/t.
  const RateRule heating{celsius_per_hour(5500), kMm, celsius_per_hour(55), celsius_per_hour(220)};
  const RateRule cooling{celsius_per_hour(6875), kMm, celsius_per_hour(55), celsius_per_hour(275)};
  CHECK(heating.at(Thickness::of(25, kMm)).celsius_per_hour() == 220.0);
  CHECK(heating.at(Thickness::of(38, kMm)).celsius_per_hour() == Approx(144.736842105).epsilon(1e-11));
  CHECK(heating.at(Thickness::of(200, kMm)).celsius_per_hour() == 55.0);
  CHECK(cooling.at(Thickness::of(12, kMm)).celsius_per_hour() == 275.0);
  CHECK(cooling.at(Thickness::of(50, kMm)).celsius_per_hour() == 137.5);
}

TEST_CASE("a rate rule with neither floor nor temperature_max is the plain quotient") {
  const RateRule rule{celsius_per_hour(5000), kMm, std::nullopt, std::nullopt};
  CHECK(rule.at(Thickness::of(10, kMm)).celsius_per_hour() == 500.0);
  CHECK(rule.at(Thickness::of(500, kMm)).celsius_per_hour() == 10.0);
}

TEST_CASE("the holding times of UCS-56 come out in minutes at every worked thickness") {
  // ASME BPVC VIII-1 UCS-56: P-No. 1: to 2 in 1 h/in, at least 15 min; above, 2 h + 15 min per inch over 2
  // in. P-No. 4: to 5 in 1 h/in, at least 15 min; above, 5 h + 15 min per inch over 5 in. Figures worked from
  // that text.
  const TimeRule::Slope beyond{minutes(15), Thickness::of(1, kInch)};
  const std::pair<Thickness, double> least{Thickness::of(0.25, kInch), minutes(15)};
  const TimeRule p1{{least, {Thickness::of(2, kInch), minutes(120)}}, beyond, std::nullopt};
  const TimeRule p4{{least, {Thickness::of(5, kInch), minutes(300)}}, beyond, std::nullopt};
  struct Row {
    const TimeRule& rule;
    double inches, minutes;
  };
  for (const Row row :
       {Row{p1, 0.2, 15}, Row{p1, 0.25, 15}, Row{p1, 1.5, 90}, Row{p1, 2, 120}, Row{p1, 3, 135},
        Row{p1, 6, 180}, Row{p4, 4, 240}, Row{p4, 5, 300}, Row{p4, 6, 315}}) {
    INFO(row.inches << " in");
    CHECK(row.rule.at(Thickness::of(row.inches, kInch)) == Approx(minutes(row.minutes)).epsilon(1e-12));
  }
}

TEST_CASE("the lower temperatures of B31.3 lengthen the hold by the metric slope") {
  // ASME B31.3-2016 table 331.1.2: 4 h for at most 25 mm, and 15 min per further 25 mm.
  const TimeRule rule{
      {{Thickness::of(25, kMm), minutes(240)}}, TimeRule::Slope{minutes(15), Thickness::of(25, kMm)}, {}};
  CHECK(rule.at(Thickness::of(10, kMm)) == minutes(240));
  CHECK(rule.at(Thickness::of(25, kMm)) == minutes(240));
  CHECK(rule.at(Thickness::of(75, kMm)) == minutes(270));
}

TEST_CASE("a fraction of a step counts as a whole one") {
  // AWS D1.1 stress relief (time from memory): to 1/4 in 15 min; to 2 in 15 min per 1/4 in or fraction of it.
  const TimeRule rule{{{Thickness::of(0.25, kInch), minutes(15)}, {Thickness::of(2, kInch), minutes(120)}},
                      std::nullopt,
                      Thickness::of(0.25, kInch)};
  struct Row {
    double inches, minutes;
  };
  for (const Row row : {Row{0.1, 15}, Row{0.25, 15}, Row{0.26, 30}, Row{0.5, 30}, Row{0.75, 45}, Row{1.1, 75},
                        Row{1.75, 105}, Row{1.76, 120}, Row{2, 120}, Row{2.2, 120}}) {
    INFO(row.inches << " in");
    CHECK(rule.at(Thickness::of(row.inches, kInch)) == Approx(minutes(row.minutes)).epsilon(1e-12));
  }
}

TEST_CASE("every whole number of steps stays where it is") {
  // The step that a thickness is a multiple of never turns into the next one by binary rounding.
  TimeRule rule;
  for (int step = 1; step <= 200; ++step) rule.points.emplace_back(Thickness::of(step * 0.1, kInch), step);
  rule.step = Thickness::of(0.1, kInch);
  for (int step = 1; step <= 200; ++step)
    CHECK(rule.at(Thickness::of(step / 10.0, kInch)) == Approx(step).epsilon(1e-9));
}

TEST_CASE("a limit that is a rule needs a thickness and a plain one does not") {
  const RateLimit plain = celsius_per_hour(160);
  const RateLimit rule = RateRule{celsius_per_hour(5500), kMm, std::nullopt, std::nullopt};
  CHECK(limit_at(plain, std::nullopt) == celsius_per_hour(160));
  CHECK_FALSE(limit_at(rule, std::nullopt).has_value());
  CHECK(limit_at(rule, Thickness::of(55, kMm)) == celsius_per_hour(100));
  CHECK(limit_at(TimeLimit{90.0}, std::nullopt) == 90.0);
  CHECK_FALSE(
      limit_at(TimeLimit{TimeRule{{{Thickness::of(1, kMm), 60.0}}, {}, {}}}, std::nullopt).has_value());
}

TEST_CASE(
    "the interpolate_max is as given, else the largest gap allowed or two minutes, never under two "
    "intervals") {
  Procedure procedure;
  CHECK(interpolate_max_for(procedure, 10.0) == 120.0);
  CHECK(interpolate_max_for(procedure, 300.0) == 600.0);
  procedure.record_limits.gap_max_s = 300.0;
  CHECK(interpolate_max_for(procedure, 10.0) == 300.0);
  CHECK(interpolate_max_for(procedure, 200.0) == 400.0);
  procedure.evaluation.interpolate_max_s = 30.0;
  CHECK(interpolate_max_for(procedure, 200.0) == 30.0);
}
