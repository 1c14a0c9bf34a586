// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/phases/course.h"
#include "tests/core/phases/drawn_record.h"

using namespace soakwright;
using made::Drawing;
using Kind = Phase::Kind;

namespace {

constexpr double kHour = 3600.0;

std::vector<Phase> phases_of(const Record& record) { return course_of(record).phases; }

std::string text_of(const std::vector<Phase>& phases) {
  static const char* const names[] = {"heat", "hold", "cool", "idle"};
  std::string text;
  for (const Phase& phase : phases)
    text += std::string(text.empty() ? "" : " ") + names[static_cast<int>(phase.kind)];
  return text;
}

/// A corner may be off by 3 min or 2 intervals, whichever is longer.
double allowed_s(const Record& record) { return std::max(180.0, 2.0 * record.interval_s); }

/// Kinds and corners, and the record's ends reached.
void check_phases(const Record& record, const std::string& kinds, const std::vector<double>& corners) {
  const std::vector<Phase> phases = phases_of(record);
  REQUIRE(text_of(phases) == kinds);
  REQUIRE(phases.size() == corners.size() + 1);
  CHECK(phases.front().start_s == record.begin_s());
  CHECK(phases.back().end_s == record.end_s());
  for (std::size_t i = 0; i < corners.size(); ++i) {
    CAPTURE(i, corners[i], phases[i].end_s);
    CHECK(std::abs(phases[i].end_s - corners[i]) <= allowed_s(record));
    CHECK(phases[i + 1].start_s == phases[i].end_s);
  }
}

/// Half an hour cold, to 600 C at 150 K/h, two hours, down to 60 C at 180 K/h, half an hour.
const std::vector<std::pair<double, double>> kRelief = {{0.0, 20.0},
                                                        {0.5 * kHour, 20.0},
                                                        {4.3667 * kHour, 600.0},
                                                        {6.3667 * kHour, 600.0},
                                                        {9.3667 * kHour, 60.0},
                                                        {9.8667 * kHour, 60.0}};
const std::vector<double> kReliefCorners = {0.5 * kHour, 4.3667 * kHour, 6.3667 * kHour, 9.3667 * kHour};

}  // namespace

TEST_CASE("a stress relief shows idle, heat, hold, cool and idle with level, rate and spread") {
  Drawing drawing;
  drawing.points = kRelief;
  drawing.channel_step_k = 2.0;  // at 600 C the six channels lie within 5 x 2 x 580 / 600 K
  drawing.places = 3;
  const Record record = made::draw(drawing);
  check_phases(record, "idle heat hold cool idle", kReliefCorners);
  const std::vector<Phase> phases = phases_of(record);
  CHECK(phases[0].level_c == Approx(20.0).margin(0.1));
  CHECK(phases[1].rate_c_per_h ==
        Approx(151.2).margin(1.0));  // the middle channels: 580 x (1 + 2.5 x 2 / 600)
  CHECK(phases[2].rate_c_per_h == Approx(0.0).margin(0.1));
  CHECK(phases[2].level_c == Approx(604.83).margin(0.1));
  CHECK(phases[2].spread_max_k == Approx(9.667).margin(0.002));
  CHECK(phases[3].rate_c_per_h == Approx(-181.5).margin(1.0));
}

TEST_CASE("corners are found at any interval, duration and noise up to the stated ones") {
  struct Case {
    double scale;  // of the drawing's times
    double interval_s;
    double noise_k;
    std::size_t channels;
  };
  // From a third of an hour to four days; from half a second to five minutes.
  const Case cases[] = {{1.0 / 29.6, 0.5, 0.5, 1}, {1.0 / 29.6, 5.0, 0.5, 4}, {1.0, 1.0, 0.5, 2},
                        {1.0, 20.0, 0.5, 1},       {1.0, 60.0, 0.5, 1},       {1.0, 300.0, 0.5, 1},
                        {1.0, 300.0, 0.0, 12},     {9.7, 300.0, 0.5, 1},      {9.7, 60.0, 0.5, 24},
                        {9.7, 30.0, 0.25, 3},      {2.4, 10.0, 0.5, 6}};
  for (const Case& one : cases)
    for (std::uint64_t seed = 1; seed <= 3; ++seed) {
      CAPTURE(one.scale, one.interval_s, one.noise_k, one.channels, seed);
      Drawing drawing;
      for (const auto& [s, c] : kRelief) drawing.points.emplace_back(s * one.scale, c);
      drawing.interval_s = one.interval_s;
      drawing.noise_k = one.noise_k;
      drawing.channels = one.channels;
      drawing.seed = seed;
      std::vector<double> corners = kReliefCorners;
      for (double& s : corners) s *= one.scale;
      check_phases(made::draw(drawing), "idle heat hold cool idle", corners);
    }
}

TEST_CASE("slow ramps of 20 K/h, a preheat and a second cycle are phases") {
  Drawing drawing;
  drawing.noise_k = 0.5;
  drawing.channels = 2;
  SECTION("20 K/h up and down, 29 hours each way") {
    drawing.interval_s = 120.0;
    drawing.points = {{0, 20}, {2 * kHour, 20}, {31 * kHour, 600}, {36 * kHour, 600}, {64 * kHour, 40}};
    check_phases(made::draw(drawing), "idle heat hold cool", {2 * kHour, 31 * kHour, 36 * kHour});
  }
  SECTION("20 K/h to a preheat of 120 C") {
    drawing.points = {{0, 20}, {1 * kHour, 20}, {6 * kHour, 120}, {9 * kHour, 120}, {13 * kHour, 40}};
    check_phases(made::draw(drawing), "idle heat hold cool", {1 * kHour, 6 * kHour, 9 * kHour});
  }
  SECTION("preheat, then relief") {
    drawing.points = {{0, 20},          {1 * kHour, 120}, {3 * kHour, 120}, {6.2 * kHour, 600},
                      {8 * kHour, 600}, {12 * kHour, 60}};
    check_phases(made::draw(drawing), "heat hold heat hold cool",
                 {1 * kHour, 3 * kHour, 6.2 * kHour, 8 * kHour});
  }
  SECTION("two cycles") {
    drawing.points = {{0, 20},          {4 * kHour, 600},  {6 * kHour, 600},  {10 * kHour, 30},
                      {12 * kHour, 30}, {16 * kHour, 590}, {17 * kHour, 590}, {21 * kHour, 40}};
    check_phases(made::draw(drawing), "heat hold cool idle heat hold cool",
                 {4 * kHour, 6 * kHour, 10 * kHour, 12 * kHour, 16 * kHour, 17 * kHour});
  }
  SECTION("starting hot, in a preheat held through welding") {
    drawing.points = {{0, 120}, {2 * kHour, 120}, {4 * kHour, 320}, {6 * kHour, 320}, {9 * kHour, 60}};
    check_phases(made::draw(drawing), "hold heat hold cool", {2 * kHour, 4 * kHour, 6 * kHour});
  }
  SECTION("starting hot, in the cooling") {
    drawing.points = {{0, 500}, {3 * kHour, 50}, {4 * kHour, 50}};
    check_phases(made::draw(drawing), "cool idle", {3 * kHour});
  }
  SECTION("ending in the hold") {
    drawing.points = {{0, 20}, {4 * kHour, 600}, {5 * kHour, 600}};
    check_phases(made::draw(drawing), "heat hold", {4 * kHour});
  }
}

TEST_CASE("noise, an overshoot, a short dip and a gap are not phases") {
  Drawing drawing;
  drawing.points = kRelief;
  drawing.noise_k = 0.5;
  drawing.channels = 3;
  drawing.interval_s = 30.0;
  SECTION("an overshoot of 20 K that rings down within half an hour") {
    const double arrival = kReliefCorners[1];
    drawing.on_top = [arrival](double s) {
      const double since = s - arrival;
      return since < 0.0 ? 0.0 : 33.0 * std::exp(-since / 600.0) * std::sin(since / 300.0);
    };
    const std::vector<Phase> phases = phases_of(made::draw(drawing));
    REQUIRE(text_of(phases) == "idle heat hold cool idle");
    CHECK(phases[1].end_s >= arrival - 180.0);
    CHECK(phases[1].end_s <= arrival + 1800.0);  // within the overshoot
  }
  SECTION("a dip of 40 K, ten minutes long") {
    const double middle = 5.4 * kHour;
    drawing.on_top = [middle](double s) { return -40.0 * std::max(0.0, 1.0 - std::abs(s - middle) / 300.0); };
    check_phases(made::draw(drawing), "idle heat hold cool idle", kReliefCorners);
  }
  SECTION("a power cut on the way up, 15 K in ten minutes") {
    drawing.on_top = [](double s) {
      return -40.0 * std::clamp((s - 3.0 * kHour) / 600.0, 0.0, 1.0) *
             std::clamp((3.4 * kHour - s) / 840.0, 0.0, 1.0);
    };
    check_phases(made::draw(drawing), "idle heat hold cool idle", kReliefCorners);
  }
  SECTION("a gap of ten minutes in the hold and one in each ramp") {
    drawing.left_out = [](double s) {
      const auto hidden = [s](double from) { return s > from && s < from + 600.0; };
      return hidden(2.0 * kHour) || hidden(5.0 * kHour) || hidden(8.0 * kHour);
    };
    check_phases(made::draw(drawing), "idle heat hold cool idle", kReliefCorners);
  }
  SECTION("whole degrees Fahrenheit without noise") {
    drawing.noise_k = 0.0;
    drawing.unit = TemperatureUnit::fahrenheit;
    drawing.places = 0;
    check_phases(made::draw(drawing), "idle heat hold cool idle", kReliefCorners);
  }
  SECTION("a controller that swings by 3 K all the time") {
    drawing.on_top = [](double s) { return 3.0 * std::sin(s / 150.0); };
    check_phases(made::draw(drawing), "idle heat hold cool idle", kReliefCorners);
  }
}

TEST_CASE("natural cooling is one phase, however slowly it ebbs") {
  Drawing drawing;
  drawing.points = {{0, 20}, {4 * kHour, 600}, {6 * kHour, 600}, {16 * kHour, 600}};
  drawing.noise_k = 0.3;
  drawing.on_top = [](double s) {
    const double since = s - 6.0 * kHour;
    return since < 0.0 ? 0.0 : -580.0 * (1.0 - std::exp(-since / (3.0 * kHour)));
  };
  check_phases(made::draw(drawing), "heat hold cool", {4 * kHour, 6 * kHour});
}

TEST_CASE("where one channel drives the others, its plateau is the hold") {
  // A radiant wall goes to 480 C in a hundred seconds; work inside it follows with ten minutes of lag.
  Drawing drawing;
  drawing.interval_s = 1.0;
  drawing.channels = 6;
  drawing.noise_k = 0.2;
  drawing.points = {{0, 24}, {60, 24}, {160, 480}, {900, 480}, {1600, 230}};
  const auto& wall = drawing.points;
  std::vector<double> work = {24.0};
  for (int s = 1; s <= 1600; ++s)
    work.push_back(work.back() + (made::on_lines(wall, s) - work.back()) / 600.0);
  drawing.altered = [&](std::size_t channel, double s, double celsius) {
    return channel == 2 ? celsius : work[static_cast<std::size_t>(s)] - static_cast<double>(channel);
  };
  const std::vector<Phase> phases = phases_of(made::draw(drawing));
  REQUIRE(text_of(phases) == "idle heat hold cool");
  CHECK(phases[2].level_c == Approx(480.0).margin(1.0));
  CHECK(phases[2].start_s == Approx(160.0).margin(10.0));
  CHECK(phases[2].end_s == Approx(900.0).margin(20.0));
}

TEST_CASE("work that merely lags in its furnace keeps its own middle") {
  Drawing drawing;
  drawing.points = kRelief;
  drawing.channels = 5;
  drawing.altered = [](std::size_t channel, double s, double celsius) {
    return channel == 0 ? celsius
                        : made::on_lines(kRelief, s - 900.0);  // a quarter of an hour behind the first
  };
  const std::vector<Phase> phases = phases_of(made::draw(drawing));
  REQUIRE(text_of(phases) == "idle heat hold cool idle");
  CHECK(phases[2].start_s == Approx(kReliefCorners[1] + 900.0).margin(180.0));
}

TEST_CASE("what was excluded, and channels that are not evaluated, do not count") {
  Drawing drawing;
  drawing.points = kRelief;
  drawing.channels = 4;
  drawing.altered = [](std::size_t channel, double, double celsius) {
    return channel == 1 ? 900.0 : celsius;
  };
  Record record = made::draw(drawing);
  CHECK(phases_of(record)[2].spread_max_k == Approx(300.0).margin(0.5));
  SECTION("excluded") { record.exclusions.push_back({1, 0.0, record.end_s(), "reads another furnace"}); }
  SECTION("off") { record.channels[1].role = ThermocoupleRole::off; }
  check_phases(record, "idle heat hold cool idle", kReliefCorners);
  CHECK(phases_of(record)[2].spread_max_k == 0.0);
}

TEST_CASE("records too poor for phases give what they can") {
  Record none;
  none.times_s = {0.0, 60.0};
  made::finish(none);
  CHECK(phases_of(none).empty());  // no channel at all

  Drawing drawing;
  drawing.points = {{0, 20}, {60, 21}};
  CHECK(text_of(phases_of(made::draw(drawing))) == "idle");  // two rows

  drawing.points = {{0, 20}, {8 * kHour, 20}};
  drawing.noise_k = 0.3;
  CHECK(text_of(phases_of(made::draw(drawing))) == "idle");

  drawing.points = {{0, 600}, {8 * kHour, 600}};
  CHECK(text_of(phases_of(made::draw(drawing))) == "hold");
}
