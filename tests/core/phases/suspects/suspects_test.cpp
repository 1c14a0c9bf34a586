// SPDX-License-Identifier: GPL-3.0-or-later
// Each kind of suspect once where it is there, and where a real process looks like it. What a process does is
// common practice, no source.
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/phases/course.h"
#include "tests/core/phases/drawn_record.h"
#include "tests/core/phases/suspects/suspects_told.h"

using namespace soakwright;
using made::Drawing;
using Code = Suspect::Code;

namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();
constexpr std::size_t kOne = 3;  // the channel that differs

/// Half an hour cold, to 600 C at 150 K/h, two hours, down to 60 C at 180 K/h, half an hour.
const std::vector<std::pair<double, double>> kRelief = {{0.0, 20.0},
                                                        {0.5 * kHour, 20.0},
                                                        {4.3667 * kHour, 600.0},
                                                        {6.3667 * kHour, 600.0},
                                                        {9.3667 * kHour, 60.0},
                                                        {9.8667 * kHour, 60.0}};
/// A preheat of 150 C held for five hours of welding, then cold.
const std::vector<std::pair<double, double>> kPreheat = {
    {0.0, 20.0}, {1.0 * kHour, 150.0}, {6.0 * kHour, 150.0}, {9.0 * kHour, 30.0}};

Drawing relief() {
  Drawing drawing;
  drawing.points = kRelief;
  drawing.noise_k = 0.3;
  drawing.channel_step_k = 2.0;
  return drawing;
}

/// The drawing with another reading in the one channel.
Drawing with_one(std::function<double(double at_s, double celsius)> reads) {
  Drawing drawing = relief();
  drawing.altered = [reads = std::move(reads)](std::size_t channel, double at_s, double celsius) {
    return channel == kOne ? reads(at_s, celsius) : celsius;
  };
  return drawing;
}

bool within(double at_s, double from_h, double to_h) {
  return at_s >= from_h * kHour && at_s <= to_h * kHour;
}

/// That the one channel is accused of this alone, from and to these hours within three intervals, and no
/// other is.
void check_accused(const Drawing& drawing, Code code, double from_h, double to_h) {
  const Record record = made::draw(drawing);
  const std::vector<Suspect> suspects = course_of(record).suspects;
  INFO(told(record, suspects));
  REQUIRE(suspects.size() == 1);
  CHECK(suspects[0].channel == kOne);
  CHECK(suspects[0].code == code);
  CHECK(std::abs(suspects[0].from_s - from_h * kHour) <= 3.0 * record.interval_s);
  CHECK(std::abs(suspects[0].to_s - to_h * kHour) <= 3.0 * record.interval_s);
}

void check_nobody(const Drawing& drawing) { check_nobody(made::draw(drawing)); }

constexpr double kEndH = 9.8667;

/// Heat of weld runs that pass the thermocouple every `every_s`, fading within minutes.
double weld_runs_k(double at_s, double every_s, double height_k, double fade_s) {
  double heat = 0.0;
  double pass_s = 1.2 * kHour;
  while (pass_s < 5.8 * kHour) {
    if (at_s >= pass_s) heat += height_k * std::exp(-(at_s - pass_s) / fade_s);
    pass_s += every_s;
  }
  return heat;
}

}  // namespace

TEST_CASE("a clean stress relief has no suspect") { check_nobody(relief()); }

TEST_CASE("open: no reading while the others have one, or a value where no work can be") {
  SECTION("no reading for forty minutes") {
    check_accused(
        with_one([](double at_s, double celsius) { return within(at_s, 5.0, 5.7) ? kNone : celsius; }),
        Code::open, 5.0, 5.7);
  }
  SECTION("a burnout value to the end") {
    check_accused(
        with_one([](double at_s, double celsius) { return at_s >= 3.0 * kHour ? 1372.0 : celsius; }),
        Code::open, 3.0, kEndH);
  }
  SECTION("never a reading") {
    check_accused(with_one([](double, double) { return kNone; }), Code::open, 0.0, kEndH);
  }
}

TEST_CASE(
    "open is not said of a radio link that loses a reading, a gap of the recorder, or what a person "
    "excluded") {
  SECTION("three readings lost") {
    check_nobody(
        with_one([](double at_s, double celsius) { return within(at_s, 5.0, 5.04) ? kNone : celsius; }));
  }
  SECTION("the recorder stops for half an hour") {
    Drawing drawing = relief();
    drawing.left_out = [](double at_s) { return within(at_s, 5.0, 5.5); };
    check_nobody(drawing);
  }
  SECTION("excluded") {
    Record record = made::draw(
        with_one([](double at_s, double celsius) { return within(at_s, 5.0, 5.7) ? kNone : celsius; }));
    record.exclusions.push_back({kOne, 4.9 * kHour, 5.8 * kHour, "plug pulled to move the bench"});
    check_nobody(record);
  }
  SECTION("a spot that is 60 K hotter than the rest in the hold") {
    check_nobody(with_one([](double, double celsius) { return celsius + 0.1 * (celsius - 20.0); }));
  }
}

TEST_CASE("stuck: the channel stands while the others move") {
  SECTION("from the ramp to the end") {
    check_accused(with_one([](double at_s, double celsius) {
                    return at_s >= 3.0 * kHour ? made::on_lines(kRelief, 3.0 * kHour) : celsius;
                  }),
                  Code::stuck, 3.0, kEndH);
  }
  SECTION("for an hour of the ramp, to the last digit") {
    Drawing drawing = with_one([](double at_s, double celsius) {
      return within(at_s, 2.0, 3.0) ? made::on_lines(kRelief, 2.0 * kHour) : celsius;
    });
    drawing.noise_k = 0.0;
    check_accused(drawing, Code::stuck, 2.0, 3.0);
  }
}

TEST_CASE(
    "stuck is not said of a channel at rest in a flat hold, or of one whose section is heated or cooled "
    "otherwise") {
  SECTION("a hold of whole degrees Fahrenheit in which all rest") {
    Drawing drawing = relief();
    drawing.unit = TemperatureUnit::fahrenheit;
    drawing.places = 0;
    drawing.noise_k = 0.0;
    check_nobody(drawing);
  }
  SECTION("a section whose heating starts an hour later and catches up") {
    const std::vector<std::pair<double, double>> later = {{0.0, 20.0},
                                                          {1.5 * kHour, 20.0},
                                                          {4.3667 * kHour, 600.0},
                                                          {6.3667 * kHour, 600.0},
                                                          {9.3667 * kHour, 60.0}};
    check_nobody(with_one([later](double at_s, double) { return made::on_lines(later, at_s); }));
  }
  SECTION("a section that is cooled faster and rests at ambient while the others still cool") {
    const std::vector<std::pair<double, double>> faster = {
        {0.0, 20.0},         {0.5 * kHour, 20.0},   {4.3667 * kHour, 600.0}, {6.3667 * kHour, 600.0},
        {8.5 * kHour, 40.0}, {9.8667 * kHour, 25.0}};
    check_nobody(with_one([faster](double at_s, double) { return made::on_lines(faster, at_s); }));
  }
}

TEST_CASE("reversed: the channel runs against the others") {
  SECTION("all the way") {
    check_accused(with_one([](double, double celsius) {
                    const double turned = 2.0 * 25.0 - celsius;
                    return turned < -250.0 ? kNone : turned;
                  }),
                  Code::reversed, 0.0, kEndH);
  }
  SECTION("from a plug that was put back the wrong way round") {
    check_accused(with_one([](double at_s, double celsius) {
                    const double turned = 2.0 * 25.0 - celsius;
                    return at_s < 2.0 * kHour ? celsius : turned < -250.0 ? kNone : turned;
                  }),
                  Code::reversed, 2.0, kEndH);
  }
}

TEST_CASE("reversed is not said of a zone whose heater trips on the ramp and cools while the others heat") {
  const std::vector<std::pair<double, double>> tripped = {
      {0.0, 20.0},          {0.5 * kHour, 20.0},     {2.5 * kHour, 320.0},  {3.0 * kHour, 280.0},
      {4.6 * kHour, 600.0}, {6.3667 * kHour, 600.0}, {9.3667 * kHour, 60.0}};
  check_nobody(with_one([tripped](double at_s, double) { return made::on_lines(tripped, at_s); }));
}

TEST_CASE("off the work: a sudden fall or jump that stays") {
  SECTION("falls half of the way to the air within two readings") {
    check_accused(with_one([](double at_s, double celsius) {
                    return within(at_s, 5.0, 6.0) ? 20.0 + 0.5 * (celsius - 20.0) : celsius;
                  }),
                  Code::detached, 5.0, 6.0);
  }
  SECTION("jumps by 90 K, to touch a heater, and stays") {
    check_accused(
        with_one([](double at_s, double celsius) { return at_s >= 5.0 * kHour ? celsius + 90.0 : celsius; }),
        Code::detached, 5.0, kEndH);
  }
}

TEST_CASE("off the work is not said of weld runs, a draught, or a door that all feel") {
  SECTION("weld runs in the preheat") {
    Drawing drawing = with_one(
        [](double at_s, double celsius) { return celsius + weld_runs_k(at_s, 1100.0, 90.0, 150.0); });
    drawing.points = kPreheat;
    check_nobody(drawing);
  }
  SECTION("a draught of three minutes") {
    check_nobody(with_one(
        [](double at_s, double celsius) { return within(at_s, 5.0, 5.05) ? celsius - 60.0 : celsius; }));
  }
  SECTION("the furnace is opened for half an hour, and all fall") {
    Drawing drawing = relief();
    drawing.on_top = [](double at_s) { return within(at_s, 5.0, 5.5) ? -150.0 : 0.0; };
    check_nobody(drawing);
  }
}

TEST_CASE("noisy: the channel scatters far more than the others") {
  made::Dice dice(11);
  check_accused(with_one([&dice](double at_s, double celsius) {
                  return within(at_s, 3.0, 5.5) ? celsius + 6.0 * dice.normal() : celsius;
                }),
                Code::noisy, 3.0, 5.5);
}

TEST_CASE("noisy is not said of whole degrees, of a controller that swings, or of weld runs") {
  SECTION("whole degrees Fahrenheit with 1 K of noise in all") {
    Drawing drawing = relief();
    drawing.noise_k = 1.0;
    drawing.unit = TemperatureUnit::fahrenheit;
    drawing.places = 0;
    check_nobody(drawing);
  }
  SECTION("an on-off controller whose swing is greatest in one zone") {
    check_nobody(
        with_one([](double at_s, double celsius) { return celsius + 6.0 * std::sin(at_s / 150.0); }));
  }
  SECTION("weld runs that pass close by every ten minutes") {
    Drawing drawing =
        with_one([](double at_s, double celsius) { return celsius + weld_runs_k(at_s, 600.0, 70.0, 60.0); });
    drawing.points = kPreheat;
    check_nobody(drawing);
  }
}

TEST_CASE("lag: the channel follows the others late, or runs ahead of them, all the way") {
  SECTION("half an hour late") {
    check_accused(
        with_one([](double at_s, double) { return made::on_lines(kRelief, std::max(0.0, at_s - 1800.0)); }),
        Code::lag, 0.0, kEndH);
  }
  SECTION("half an hour ahead") {
    check_accused(with_one([](double at_s, double) { return made::on_lines(kRelief, at_s + 1800.0); }),
                  Code::lag, 0.0, kEndH);
  }
}

TEST_CASE("lag is not said of the far side of a wall, a spread on heating, or a cooler zone") {
  SECTION("six minutes late on the far side of a thick wall") {
    check_nobody(
        with_one([](double at_s, double) { return made::on_lines(kRelief, std::max(0.0, at_s - 360.0)); }));
  }
  SECTION("40 K behind while heating, with the others in the hold and in cooling") {
    check_nobody(with_one([](double at_s, double celsius) {
      const double behind = std::clamp((at_s - 0.5 * kHour) / 1800.0, 0.0, 1.0) *
                            std::clamp((4.8 * kHour - at_s) / 1800.0, 0.0, 1.0);
      return celsius - 40.0 * behind;
    }));
  }
  SECTION("a zone that stays a tenth cooler") {
    check_nobody(with_one([](double, double celsius) { return celsius - 0.1 * (celsius - 20.0); }));
  }
}

TEST_CASE("channels that are off, or measure the air, are not held against the work") {
  Record record = made::draw(with_one([](double, double) { return 20.0; }));
  REQUIRE(course_of(record).suspects.size() == 1);
  SECTION("off") { record.channels[kOne].role = ThermocoupleRole::off; }
  SECTION("air") { record.channels[kOne].role = ThermocoupleRole::air; }
  check_nobody(record);
}

TEST_CASE("with two channels the faulty one is named and not the other") {
  Drawing drawing = relief();
  drawing.channels = 2;
  SECTION("reversed") {
    drawing.altered = [](std::size_t channel, double, double celsius) {
      return channel == 1 ? std::max(-240.0, 50.0 - celsius) : celsius;
    };
  }
  SECTION("burnt out") {
    drawing.altered = [](std::size_t channel, double at_s, double celsius) {
      return channel == 1 && at_s > 3.0 * kHour ? 1372.0 : celsius;
    };
  }
  const Record record = made::draw(drawing);
  const std::vector<Suspect> suspects = course_of(record).suspects;
  INFO(told(record, suspects));
  REQUIRE(suspects.size() == 1);
  CHECK(suspects[0].channel == 1);
}

TEST_CASE("where one channel drives the others nobody is accused of following") {
  Drawing drawing;
  drawing.interval_s = 1.0;
  drawing.noise_k = 0.2;
  drawing.points = {{0, 24}, {60, 24}, {160, 480}, {900, 480}, {1600, 230}};
  const auto& wall = drawing.points;
  std::vector<double> work = {24.0};
  for (int s = 1; s <= 1600; ++s)
    work.push_back(work.back() + (made::on_lines(wall, s) - work.back()) / 600.0);
  drawing.altered = [&](std::size_t channel, double at_s, double celsius) {
    return channel == 2 ? celsius : work[static_cast<std::size_t>(at_s)] - static_cast<double>(channel);
  };
  check_nobody(drawing);
}
