// SPDX-License-Identifier: GPL-3.0-or-later
// Slopes with a consecutive tenth of their readings left out, held against a plain fit of what is left.
#include "core/measure/rates/left_out_tenth.h"

#include <random>

#include <catch2/catch.hpp>

#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

struct Window {
  explicit Window(const MadeRecord& made)
      : traced(made, 1e6),
        ticks(row_ticks(traced.record)),
        integers(integer_samples(traced.record, ticks, source(), 0, source().c.size())) {}
  [[nodiscard]] const TraceSource& source() const { return traced.set.traces[0].sources[0]; }
  /// The smallest slope with a tenth left out, in C/h, by the textbook sums in long double.
  [[nodiscard]] double smallest(std::size_t first, std::size_t end, double sign) const {
    const std::size_t tenth = std::max<std::size_t>(1, (end - first) / 10);
    double least = 1e300;
    for (std::size_t from = first; from + tenth <= end; ++from) {
      long double n = 0, t = 0, v = 0, tt = 0, tv = 0;
      for (std::size_t i = first; i < end; ++i) {
        if (i >= from && i < from + tenth) continue;
        const long double x = source().t[i] - source().t[first];
        const long double y = source().c[i];
        n += 1;
        t += x;
        v += y;
        tt += x * x;
        tv += x * y;
      }
      least = std::min(least, static_cast<double>(sign * (n * tv - t * v) / (n * tt - t * t) * 3600.0L));
    }
    return least;
  }
  [[nodiscard]] bool beyond(std::size_t first, std::size_t end, double sign, double bound) const {
    return LeftOutTenth(integers, 0, source().c.size()).beyond(first, end, sign, bound);
  }
  Traced traced;
  RowTicks ticks;
  IntegerSamples integers;
};

}  // namespace

TEST_CASE("A tenth is rounded down and at least one reading") {
  CHECK(tenth_of(5) == 1);
  CHECK(tenth_of(19) == 1);
  CHECK(tenth_of(20) == 2);
  CHECK(tenth_of(901) == 90);
}

TEST_CASE("A spike that makes a slope does not make it without a tenth of the readings") {
  // Level at 100 but for the last of ten readings, 10 K high: with it the slope is 10 · 9 · 6 / (10 · 99 /
  // 60) C/h, without it 0.
  std::vector<double> values(10, 100.0);
  values.back() = 110.0;
  const Window window(MadeRecord::every(60, 10).column("TC1", values));
  CHECK_FALSE(window.beyond(0, 10, 1.0, 0.0));
  CHECK(window.beyond(0, 10, 1.0, -1e-9));
  // Two of them need two tenths.
  values[8] = 110.0;
  const Window two(MadeRecord::every(60, 10).column("TC1", values));
  CHECK(two.beyond(0, 10, 1.0, 0.0));
  // Of twenty readings a tenth is two.
  std::vector<double> longer(20, 100.0);
  longer[18] = longer[19] = 110.0;
  CHECK_FALSE(Window(MadeRecord::every(60, 20).column("TC1", longer)).beyond(0, 20, 1.0, 0.0));
}

TEST_CASE("A straight ramp keeps its slope whatever is left out") {
  std::vector<double> values;
  for (int row = 0; row < 30; ++row) values.push_back(100.0 - 2.0 * row);
  const Window window(MadeRecord::every(60, 30).column("TC1", values));
  CHECK(window.beyond(0, 30, -1.0, 120.0 - 1e-9));
  CHECK_FALSE(window.beyond(0, 30, -1.0, 120.0 + 1e-9));
}

TEST_CASE("A window that would keep fewer than three readings is taken whole") {
  const Window window(MadeRecord::every(60, 3).column("TC1", {100.0, 101.0, 105.0}));
  // 5 K in two minutes: 150 C/h with all three; without the last it would be 60.
  CHECK(window.beyond(0, 3, 1.0, 149.9));
  CHECK_FALSE(window.beyond(0, 3, 1.0, 150.1));
}

TEST_CASE("What is left is fitted as a plain fit does, at even and uneven steps, wherever the window lies") {
  std::mt19937 chance(3);
  std::normal_distribution<double> scatter(0.0, 2.0);
  std::uniform_int_distribution<int> step(1, 200);
  for (int round = 0; round < 40; ++round) {
    const bool uneven = round % 2 == 1;
    std::vector<double> t{0.0};
    std::vector<double> v{300.0};
    while (t.size() < 80) {
      t.push_back(t.back() + (uneven ? step(chance) : 30.0));
      v.push_back(300.0 + 0.03 * t.back() + scatter(chance));
    }
    const Window window(MadeRecord(t).column("TC1", v));
    const std::size_t first = static_cast<std::size_t>(round);
    const std::size_t end = first + 5 + static_cast<std::size_t>(round % 30);
    const double sign = round % 3 == 0 ? -1.0 : 1.0;
    const double least = window.smallest(first, end, sign);
    CAPTURE(round, least);
    CHECK(window.beyond(first, end, sign, least - 1e-6));
    CHECK_FALSE(window.beyond(first, end, sign, least + 1e-6));
  }
}
