// SPDX-License-Identifier: GPL-3.0-or-later
// Readings that no process makes, and channels that show by themselves that they are wrong. What work can do
// is common practice, no source: the heat of a weld run comes at once and fades with a minute or more.
#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/phases/course.h"
#include "core/wording/suspect_words.h"
#include "tests/core/phases/drawn_record.h"
#include "tests/core/phases/suspects/suspects_told.h"

using namespace soakwright;
using made::Drawing;
using Code = Suspect::Code;

namespace {

const std::vector<std::pair<double, double>> kRelief = {
    {0.0, 20.0}, {2.0 * kHour, 600.0}, {3.0 * kHour, 600.0}, {5.0 * kHour, 60.0}};

Drawing relief(double interval_s) {
  Drawing drawing;
  drawing.points = kRelief;
  drawing.interval_s = interval_s;
  drawing.noise_k = 0.1;
  drawing.channels = 3;
  return drawing;
}

/// The record with `reads(row, celsius)` in the second channel.
template <typename Reads>
Record with_second(const Drawing& drawing, const Reads& reads) {
  Record record = made::draw(drawing);
  std::vector<double> celsius;
  for (std::size_t row = 0; row < record.rows(); ++row)
    celsius.push_back(reads(row, *record.channels[1].readings.celsius(row)));
  record.channels[1] =
      made::channel_of("TC2", celsius, std::vector<char>(celsius.size()), TemperatureUnit::celsius, 1);
  return record;
}

/// That the second channel alone is suspect, once, of this.
Suspect only_suspect(const Record& record, Code code) {
  const std::vector<Suspect> suspects = course_of(record).suspects;
  INFO(told(record, suspects));
  REQUIRE(suspects.size() == 1);
  CHECK(suspects[0].channel == 1);
  CHECK(suspects[0].code == code);
  return suspects[0];
}

}  // namespace

TEST_CASE("one to three readings far off are a spike, up or down") {
  for (const double height_k : {53.0, -53.0, 21.0})
    for (const std::size_t readings : {1U, 2U, 3U}) {
      INFO(height_k << " K for " << readings);
      const Record record = with_second(relief(1.0), [&](std::size_t row, double celsius) {
        return row >= 9000 && row < 9000 + readings ? celsius + height_k : celsius;
      });
      const Suspect spike = only_suspect(record, Code::spike);
      CHECK(spike.from_s == 9000.0);
      CHECK(spike.to_s == 9000.0 + static_cast<double>(readings - 1));
      CHECK(spike.evidence.count == readings);
      CHECK(spike.evidence.change_k == Approx(height_k).margin(1.0));
    }
}

TEST_CASE("a spike is not said of four readings, of less than 20 K, or of a slow recorder") {
  SECTION("four readings") {
    check_nobody(with_second(relief(1.0), [](std::size_t row, double celsius) {
      return row >= 9000 && row < 9004 ? celsius + 53.0 : celsius;
    }));
  }
  SECTION("18 K") {
    check_nobody(with_second(
        relief(1.0), [](std::size_t row, double celsius) { return row == 9000 ? celsius + 18.0 : celsius; }));
  }
  SECTION("100 K at 60 s: 1.7 K a second") {
    check_nobody(with_second(relief(60.0), [](std::size_t row, double celsius) {
      return row == 150 ? celsius + 100.0 : celsius;
    }));
  }
}

TEST_CASE("spikes on a tenth of the readings make a channel noisy") {
  made::Dice dice(5);
  const Record record = with_second(relief(30.0), [&](std::size_t, double celsius) {
    return dice.chance(0.1) ? celsius + 150.0 : celsius;
  });
  only_suspect(record, Code::noisy);
}

TEST_CASE("a contact that fails for minutes and closes again makes a channel noisy") {
  const Record record = with_second(relief(30.0), [](std::size_t row, double celsius) {
    return row > 250 && row < 350 && row % 12 < 6 ? 100.0 : celsius;
  });
  const Suspect noisy = only_suspect(record, Code::noisy);
  CHECK(noisy.from_s == Approx(251 * 30.0).margin(180.0));
  CHECK(noisy.to_s == Approx(349 * 30.0).margin(180.0));
}

TEST_CASE(
    "jumps of more than 50 K from second to second are noisy, though the channels do not run together") {
  // One drives, the others follow far behind: no middle to hold a channel against.
  Drawing drawing;
  drawing.interval_s = 1.0;
  drawing.noise_k = 0.2;
  drawing.points = {{0, 24}, {60, 24}, {160, 480}, {900, 480}, {1600, 230}};
  std::vector<double> work = {24.0};
  for (int s = 1; s <= 1600; ++s)
    work.push_back(work.back() + (made::on_lines(drawing.points, s) - work.back()) / 600.0);
  made::Dice dice(3);
  drawing.altered = [&](std::size_t channel, double at_s, double celsius) {
    if (channel == 0) return celsius;
    const double here = work[static_cast<std::size_t>(at_s)] - static_cast<double>(channel);
    return channel == 1 && at_s > 400.0 ? here + (dice.chance(0.5) ? 120.0 : 0.0) : here;
  };
  const Record record = made::draw(drawing);
  const Suspect noisy = only_suspect(record, Code::noisy);
  CHECK(noisy.evidence.kind == SuspectEvidence::Kind::frequent_jumps);
}

TEST_CASE(
    "a channel that goes below ambient while the others heat is reversed, though they do not run together") {
  Drawing drawing;
  drawing.interval_s = 5.0;
  drawing.noise_k = 0.2;
  drawing.channels = 5;
  drawing.points = {{0, 24}, {600, 24}, {2400, 500}, {4000, 520}};
  const double late_s[] = {0.0, 0.0, 600.0, 900.0, 1500.0};
  const double share[] = {1.0, -0.25, 0.8, 0.6, 0.4};
  drawing.altered = [&](std::size_t channel, double at_s, double) {
    return 24.0 +
           share[channel] * (made::on_lines(drawing.points, std::max(0.0, at_s - late_s[channel])) - 24.0);
  };
  only_suspect(made::draw(drawing), Code::reversed);
}

TEST_CASE("a channel that stays at 25 °C while each of the others heats by hundreds is stuck") {
  Drawing drawing;
  drawing.interval_s = 5.0;
  drawing.noise_k = 0.2;
  drawing.channels = 5;
  drawing.points = {{0, 24}, {600, 24}, {2400, 700}, {3000, 700}};
  const double late_s[] = {0.0, 0.0, 300.0, 600.0, 1100.0};
  drawing.altered = [&](std::size_t channel, double at_s, double) {
    return channel == 1 ? 25.0 : made::on_lines(drawing.points, std::max(0.0, at_s - late_s[channel]));
  };
  only_suspect(made::draw(drawing), Code::stuck);
}

TEST_CASE("the time of an open circuit is that between its first and its last row") {
  Drawing drawing = relief(30.0);
  drawing.altered = [](std::size_t channel, double at_s, double celsius) {
    return channel == 1 && at_s >= 2400.0 && at_s <= 3600.0 ? std::nan("") : celsius;
  };
  const Record record = made::draw(drawing);
  const Suspect open = only_suspect(record, Code::open);
  CHECK(open.from_s == 2400.0);
  CHECK(open.to_s == 3600.0);
  CHECK(open.evidence.seconds == 1200.0);
  CHECK(suspect_sentence(open, record) ==
        "No reading for 20 min while the recorder ran: open circuit or not connected.");
}
