// SPDX-License-Identifier: GPL-3.0-or-later
// Readings that are repeated, copied or cut off: found where a record's own scatter shows that they are no
// measurement, and not where a quiet furnace or a coarse recorder gives the same. That a frozen input in a
// hold must not pass is common practice, no source; the odds are worked out beside each check.
#include <algorithm>
#include <cmath>
#include <set>
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

const std::vector<std::pair<double, double>> kRelief = {{0.0, 20.0},
                                                        {0.5 * kHour, 20.0},
                                                        {4.3667 * kHour, 605.0},
                                                        {6.8667 * kHour, 605.0},
                                                        {9.8667 * kHour, 60.0},
                                                        {10.3667 * kHour, 60.0}};
constexpr double kHoldBegin = 4.4 * kHour;
constexpr double kHoldEnd = 6.85 * kHour;

/// Six thermocouples, every 30 s, to a tenth of a degree, with 0.15 K of noise: a usual recorder.
Drawing relief() {
  Drawing drawing;
  drawing.points = kRelief;
  drawing.interval_s = 30.0;
  drawing.noise_k = 0.15;
  drawing.channel_step_k = 1.0;
  return drawing;
}

std::size_t row_at(const Record& record, double at_s) {
  return static_cast<std::size_t>(
      std::lower_bound(record.times_s.begin(), record.times_s.end(), at_s - 1e-9) - record.times_s.begin());
}

/// The record with the readings of one channel made by `reads(row)`, in the log's tenths or whole degrees.
template <typename Reads>
void rewrite(Record& record, std::size_t channel, const Reads& reads) {
  std::vector<double> celsius;
  for (std::size_t row = 0; row < record.rows(); ++row) celsius.push_back(reads(row));
  const Channel& old = record.channels[channel];
  const bool tenths = old.readings.resolution_k() < 0.5;
  record.channels[channel] = made::channel_of(old.name, celsius, std::vector<char>(celsius.size()),
                                              TemperatureUnit::celsius, tenths ? 1 : 0);
}

void freeze(Record& record, std::size_t channel, double from_s, double to_s) {
  const Readings readings = record.channels[channel].readings;
  const std::size_t first = row_at(record, from_s);
  const std::size_t last = row_at(record, to_s);
  rewrite(record, channel,
          [&](std::size_t row) { return *readings.celsius(row > first && row <= last ? first : row); });
}

/// The channels of which it is said, all with this code and around this time.
std::set<std::size_t> accused(const Record& record, Code code, double from_s, double to_s) {
  const std::vector<Suspect> suspects = course_of(record).suspects;
  INFO(told(record, suspects));
  std::set<std::size_t> channels;
  for (const Suspect& suspect : suspects) {
    CHECK(suspect.code == code);
    // The readings beside it may be equal by chance.
    CHECK(std::abs(suspect.from_s - from_s) <= 5.0 * record.interval_s);
    CHECK(std::abs(suspect.to_s - to_s) <= 5.0 * record.interval_s);
    channels.insert(suspect.channel);
  }
  return channels;
}

const std::set<std::size_t> kAll = {0, 1, 2, 3, 4, 5};

}  // namespace

TEST_CASE("a reading that one thermocouple repeats through the hold is stuck, wherever it begins") {
  // At 0.15 K of noise and tenths a reading repeats with 0.26 at most: 60 of them with 1e-35.
  for (const double minutes : {30.0, 60.0, 127.0})
    for (std::size_t channel = 0; channel < 6; ++channel)
      for (const double share : {0.0, 0.5, 1.0}) {
        Record record = made::draw(relief());
        const double from_s = kHoldBegin + share * (kHoldEnd - kHoldBegin - 60.0 * minutes);
        freeze(record, channel, from_s, from_s + 60.0 * minutes);
        INFO(minutes << " min of channel " << channel << " from " << from_s);
        CHECK(accused(record, Code::stuck, from_s, from_s + 60.0 * minutes) ==
              std::set<std::size_t>{channel});
      }
}

TEST_CASE("a row that all thermocouples repeat in the hold makes all of them stuck") {
  for (const double minutes : {10.0, 30.0, 117.0})
    for (const double share : {0.0, 0.5, 1.0}) {
      Record record = made::draw(relief());
      const double from_s = kHoldBegin + share * (kHoldEnd - kHoldBegin - 60.0 * minutes);
      for (std::size_t channel = 0; channel < 6; ++channel)
        freeze(record, channel, from_s, from_s + 60.0 * minutes);
      INFO(minutes << " min from " << from_s);
      CHECK(accused(record, Code::stuck, from_s, from_s + 60.0 * minutes) == kAll);
    }
}

TEST_CASE("a repeated reading is stuck with one thermocouple alone, too") {
  Drawing drawing = relief();
  drawing.channels = 1;
  Record record = made::draw(drawing);
  freeze(record, 0, 5.0 * kHour, 6.0 * kHour);
  CHECK(accused(record, Code::stuck, 5.0 * kHour, 6.0 * kHour) == std::set<std::size_t>{0});
}

TEST_CASE("a few equal readings are nobody's fault: eleven in a row happen") {
  Record record = made::draw(relief());
  freeze(record, 2, 5.0 * kHour, 5.0 * kHour + 10 * 30.0);
  check_nobody(record);
}

TEST_CASE("equal readings of a coarse recorder on a quiet furnace are no fault") {
  // Noise of a fifth of the digit repeats a reading in the middle of the digit for hours.
  for (const double noise_k : {0.0, 0.05, 0.1, 0.2})
    for (const double interval_s : {1.0, 30.0, 300.0})
      for (const TemperatureUnit unit : {TemperatureUnit::celsius, TemperatureUnit::fahrenheit}) {
        Drawing drawing = relief();
        drawing.noise_k = noise_k;
        drawing.interval_s = interval_s;
        drawing.unit = unit;
        drawing.places = 0;
        INFO(noise_k << " K every " << interval_s << " s");
        check_nobody(made::draw(drawing));
      }
}

TEST_CASE("a scanner that reads every ten seconds under a log of each second is no fault") {
  Drawing drawing = relief();
  drawing.interval_s = 1.0;
  Record record = made::draw(drawing);
  for (std::size_t channel = 0; channel < 6; ++channel) {
    const Readings readings = record.channels[channel].readings;
    rewrite(record, channel, [&](std::size_t row) { return *readings.celsius(row - row % 10); });
  }
  check_nobody(record);
}

TEST_CASE("values that change only every ten minutes under stamps of 30 s make all stuck throughout") {
  Record record = made::draw(relief());
  for (std::size_t channel = 0; channel < 6; ++channel) {
    const Readings readings = record.channels[channel].readings;
    rewrite(record, channel, [&](std::size_t row) { return *readings.celsius(row - row % 20); });
  }
  CHECK(accused(record, Code::stuck, 0.0, record.times_s.back()) == kAll);
}

TEST_CASE("columns that equal the first in every row are copies of it; the first is not") {
  Record record = made::draw(relief());
  const Readings readings = record.channels[0].readings;
  for (std::size_t channel = 1; channel < 6; ++channel)
    rewrite(record, channel, [&](std::size_t row) { return *readings.celsius(row); });
  CHECK(accused(record, Code::copied, 0.0, record.times_s.back()) == std::set<std::size_t>{1, 2, 3, 4, 5});
}

TEST_CASE("a column that becomes a copy halfway is one from there on") {
  Record record = made::draw(relief());
  const Readings from = record.channels[1].readings;
  const Readings own = record.channels[4].readings;
  const std::size_t half = row_at(record, 5.0 * kHour);
  rewrite(record, 4, [&](std::size_t row) { return *(row >= half ? from : own).celsius(row); });
  CHECK(accused(record, Code::copied, 5.0 * kHour, record.times_s.back()) == std::set<std::size_t>{4});
}

TEST_CASE("two equal columns without any scatter are no copies: nothing tells them apart from two alike") {
  Drawing drawing = relief();
  drawing.noise_k = 0.0;
  drawing.channel_step_k = 0.0;
  check_nobody(made::draw(drawing));
}

TEST_CASE("columns that are the set point are copies of it") {
  Record record = made::draw(relief());
  OtherColumn set_point;
  set_point.name = "Set point";
  set_point.why = {ColumnContent::set_point};
  Drawing straight = relief();
  straight.noise_k = 0.0;
  straight.channel_step_k = 0.0;
  set_point.readings = made::draw(straight).channels[0].readings;
  record.other_columns.push_back(set_point);
  check_nobody(record);
  for (std::size_t channel = 0; channel < 6; ++channel)
    rewrite(record, channel, [&](std::size_t row) { return *set_point.readings->celsius(row); });
  const double end_s = record.times_s.back();
  CHECK(accused(record, Code::copied, 0.0, end_s) == kAll);
}

TEST_CASE("columns that are a set point are copies of it, though its column was read as a thermocouple") {
  Drawing straight = relief();
  straight.noise_k = 0.0;
  straight.channel_step_k = 0.0;
  Record record = made::draw(straight);
  record.channels[5].name = "Set point";
  record.notices.push_back(
      {"name-unclear", 1, 1, "Set point",
       state(Sentence::name_suggests, AsWritten{"Set point"}, OneOfContent{ColumnContent::set_point})});
  CHECK(accused(record, Code::copied, 0.0, record.times_s.back()) == std::set<std::size_t>{0, 1, 2, 3, 4});
}

TEST_CASE("twenty minutes of a hold that are replayed are copies, and the first twenty are not") {
  Record record = made::draw(relief());
  const std::size_t first = row_at(record, 5.0 * kHour);
  for (std::size_t channel = 0; channel < 6; ++channel) {
    const Readings readings = record.channels[channel].readings;
    rewrite(record, channel, [&](std::size_t row) {
      const bool replayed = row >= first && row < first + std::size_t{5} * 40;
      return *readings.celsius(replayed ? first + (row - first) % 40 : row);
    });
  }
  const std::vector<Suspect> suspects = course_of(record).suspects;
  INFO(told(record, suspects));
  std::set<std::size_t> channels;
  double from_s = record.times_s.back();
  double to_s = 0.0;
  for (const Suspect& suspect : suspects) {
    CHECK(suspect.code == Code::copied);
    channels.insert(suspect.channel);
    from_s = std::min(from_s, suspect.from_s);
    to_s = std::max(to_s, suspect.to_s);
  }
  CHECK(channels == kAll);
  CHECK(from_s == record.times_s[first + 40]);
  CHECK(to_s == record.times_s[first + 199]);
}

TEST_CASE("a recorder whose range ends within the hold's range clips all that go beyond") {
  Drawing drawing = relief();
  drawing.points[2].second = drawing.points[3].second = 650.0;
  drawing.altered = [](std::size_t, double, double celsius) { return celsius; };
  Record record = made::draw(drawing);
  double from_s = record.times_s.back();
  double to_s = 0.0;
  for (std::size_t channel = 0; channel < 6; ++channel) {
    const Readings readings = record.channels[channel].readings;
    for (std::size_t row = 0; row < record.rows(); ++row)
      if (*readings.celsius(row) > 610.0) {
        from_s = std::min(from_s, record.times_s[row]);
        to_s = std::max(to_s, record.times_s[row]);
      }
    rewrite(record, channel, [&](std::size_t row) { return std::min(*readings.celsius(row), 610.0); });
  }
  const std::vector<Suspect> suspects = course_of(record).suspects;
  INFO(told(record, suspects));
  std::set<std::size_t> channels;
  for (const Suspect& suspect : suspects) {
    CHECK(suspect.code == Code::clipped);
    CHECK(std::abs(suspect.from_s - from_s) <= 180.0);  // they come there one after the other
    CHECK(std::abs(suspect.to_s - to_s) <= 180.0);
    channels.insert(suspect.channel);
  }
  CHECK(channels == kAll);
}

TEST_CASE("one thermocouple that ends flat while the others go on is clipped") {
  Record record = made::draw(relief());
  const Readings readings = record.channels[3].readings;
  rewrite(record, 3, [&](std::size_t row) { return std::min(*readings.celsius(row), 500.0); });
  std::size_t first = 0;
  while (*readings.celsius(first) < 500.0) ++first;
  std::size_t last = record.rows() - 1;
  while (*readings.celsius(last) < 500.0) --last;
  CHECK(accused(record, Code::clipped, record.times_s[first], record.times_s[last]) ==
        std::set<std::size_t>{3});
}
