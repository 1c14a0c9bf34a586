// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/holds/range_spans.h"

#include <limits>

#include <catch2/catch.hpp>

#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();

std::string told(const std::vector<RangeSpan>& spans) {
  std::string text;
  for (const RangeSpan& span : spans) {
    if (!text.empty()) text += ", ";
    text += span.state == RangeState::below ? "below " : span.state == RangeState::in ? "in " : "above ";
    text += say(Span{span.from, span.to});
  }
  return text;
}

std::string in_range(std::vector<double> values, double low, double high, double interpolate_max_s = 120) {
  const std::size_t rows = values.size();
  const Traced made(MadeRecord::every(60, rows).column("TC1", std::move(values)), interpolate_max_s);
  return told(range_spans(made.set.traces[0], low, high));
}

}  // namespace

TEST_CASE("Crossings lie on the straight lines at the printed level, not on rows") {
  struct Case {
    const char* what;
    std::vector<double> values;
    const char* expected;
  };
  // TemperatureRange 500…600, a row a minute.
  const std::vector<Case> cases = {
      // 480 to 540: a third of the way is 500. 540 to 660: half way is 600.
      {"up through both edges", {480, 540, 660}, "below 0..20, in 20..90, above 90..120"},
      // 660 to 600 touches the edge and falls on to 480: in from 60 s; 500 after 5/6 of the next minute.
      {"down, touching the upper edge", {660, 600, 480}, "above 0..60, in 60..110, below 110..120"},
      // One step through the whole range: 400 to 700, a third and two thirds of the way.
      {"through the range in one step", {400, 700}, "below 0..20, in 20..40, above 40..60"},
      {"down through it in one step", {700, 400}, "above 0..20, in 20..40, below 40..60"},
      {"never there", {400, 420}, "below 0..60"},
      {"always there", {500, 600, 500}, "in 0..120"},
  };
  for (const Case& c : cases) {
    CAPTURE(c.what);
    CHECK(in_range(c.values, 500, 600) == c.expected);
  }
}

TEST_CASE("At the edge is in") {
  CHECK(in_range({500, 500, 500}, 500, 600) == "in 0..120");
  CHECK(in_range({600, 600, 600}, 500, 600) == "in 0..120");
  CHECK(in_range({499.9, 499.9}, 500, 600) == "below 0..60");
  CHECK(in_range({600.1, 600.1}, 500, 600) == "above 0..60");
  // Only touched: no time out of the range where the lower edge is reached from above.
  CHECK(in_range({510, 500, 510}, 500, 600) == "in 0..120");
  // Only touched from below: no time in the range, so nothing of it is listed.
  CHECK(in_range({490, 500, 490}, 500, 600) == "below 0..120");
}

TEST_CASE("A level in °F is met by readings in °F that print it") {
  // 1100 °F is 593.33… °C, which no decimal hits.
  const Traced made(
      MadeRecord::every(60, 3).column("TC1", {1100, 1100, 1099}, 0, TemperatureUnit::fahrenheit));
  const double low = Temperature::of(1100, TemperatureUnit::fahrenheit).celsius();
  CHECK(told(range_spans(made.set.traces[0], low, kInfinite)) == "in 0..60, below 60..120");
}

TEST_CASE("Unknown time is in no span, and a lone reading is one of no length") {
  CHECK(in_range({550, kNoReading, kNoReading, 650, kNoReading, kNoReading, 550}, 500, 600, 60) ==
        "in 0..0, above 180..180, in 360..360");
}

TEST_CASE("Long quiet runs are passed over without missing what happens in them") {
  // 1,000 rows in the range but for one reading at every place in turn, whatever blocks the search works in.
  for (std::size_t place = 1; place + 1 < 1000; place += 13) {
    std::vector<double> values(1000, 550);
    values[place] = 450;  // 500 is half way there, and half way back
    const double t = 60.0 * static_cast<double>(place);
    std::string expected = "in " + say(Span{0, t - 30});
    expected += ", below " + say(Span{t - 30, t + 30});
    expected += ", in " + say(Span{t + 30, 59940});
    CAPTURE(place);
    CHECK(in_range(values, 500, 600) == expected);
  }
}

TEST_CASE("First and last crossings of a level are found from below and from above") {
  // 0, 100, 0, 100, 0: up through 50 at 30 and 150 s, down at 90 and 210 s.
  const Traced made(MadeRecord::every(60, 5).column("TC1", {0, 100, 0, 100, 0}));
  const Trace& tc1 = made.set.traces[0];
  CHECK(say(first_rise_through(tc1, 50, 0)) == "30");
  CHECK(say(first_rise_through(tc1, 50, 29)) == "30");
  CHECK(say(first_rise_through(tc1, 50, 31)) == "150");
  CHECK(say(first_rise_through(tc1, 50, 151)) == "none");
  CHECK(say(last_rise_through(tc1, 50, 240)) == "150");
  CHECK(say(last_rise_through(tc1, 50, 149)) == "30");
  CHECK(say(last_rise_through(tc1, 50, 29)) == "none");
  CHECK(say(first_fall_through(tc1, 50, 0)) == "90");
  CHECK(say(first_fall_through(tc1, 50, 90)) == "90");
  CHECK(say(first_fall_through(tc1, 50, 91)) == "210");
  CHECK(say(last_fall_through(tc1, 50, 240)) == "210");
  CHECK(say(last_fall_through(tc1, 50, 210)) == "210");
  CHECK(say(last_fall_through(tc1, 50, 209)) == "90");
  CHECK(say(last_fall_through(tc1, 50, 89)) == "none");
  CHECK(say(first_rise_through(tc1, 101, 0)) == "none");
}

TEST_CASE("Reaching a level is a rise through it, leaving it a fall through it") {
  // 0 to 50 reaches 50 at 60 s and stays; it leaves at 120 s.
  const Traced made(MadeRecord::every(60, 4).column("TC1", {0, 50, 50, 0}));
  CHECK(say(first_rise_through(made.set.traces[0], 50, 0)) == "60");
  CHECK(say(first_fall_through(made.set.traces[0], 50, 0)) == "120");
}

TEST_CASE("No crossing is seen in a hole") {
  const Traced made(MadeRecord({0, 60, 600, 660}).column("TC1", {0, 20, 80, 100}), 120);
  CHECK(say(first_rise_through(made.set.traces[0], 50, 0)) == "none");
  CHECK(say(last_rise_through(made.set.traces[0], 50, 660)) == "none");
}
