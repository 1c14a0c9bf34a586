// SPDX-License-Identifier: GPL-3.0-or-later
// The level of the readings' scatter. Worked by hand; the median of χ²(1), 0.4549, by R: qchisq(0.5, 1) is
// 0.4549364.
#include "core/measure/rates/reading_noise.h"

#include <algorithm>
#include <cmath>
#include <random>

#include <catch2/catch.hpp>

#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

struct Samples {
  explicit Samples(const MadeRecord& made)
      : traced(made, 1e6),
        ticks(row_ticks(traced.record)),
        integers(integer_samples(traced.record, ticks, traced.set.traces[0].sources[0], 0, count())) {}
  [[nodiscard]] std::size_t count() const { return traced.set.traces[0].sources[0].c.size(); }
  Traced traced;
  RowTicks ticks;
  IntegerSamples integers;
};

double level_of(const MadeRecord& made) {
  const Samples samples(made);
  ReadingNoise noise;
  noise.add(samples.integers, 0, samples.count());
  return noise.level();
}

/// e of each triple as it is defined, in order of size.
std::vector<double> squares(const std::vector<double>& t, const std::vector<double>& v) {
  std::vector<double> all;
  for (std::size_t i = 1; i + 1 < v.size(); ++i) {
    const double w = (t[i] - t[i - 1]) / (t[i + 1] - t[i - 1]);
    const double d = v[i] - (v[i - 1] + w * (v[i + 1] - v[i - 1]));
    all.push_back(d * d / (1 + w * w + (1 - w) * (1 - w)));
  }
  std::sort(all.begin(), all.end());
  return all;
}

}  // namespace

TEST_CASE("With fewer than 16 triples the level is the mean, from 16 on the median over 0.4549") {
  // Level but for one reading 3 K high, at even steps: three triples have d = 1.5, 3, 1.5, so that e is 1.5,
  // 6 and 1.5; all others 0.
  const auto with_rows = [](std::size_t rows) {
    std::vector<double> values(rows, 100.0);
    values[8] = 103.0;
    return MadeRecord::every(60, rows).column("TC1", values);
  };
  CHECK(level_of(with_rows(17)) == close_to(9.0 / 15.0, 1e-12));  // 15 triples
  CHECK(level_of(with_rows(18)) == 0.0);                          // 16 triples: a spike does not raise it
}

TEST_CASE("Of an even number of triples the two middle ones are averaged") {
  // Each 100, 100, 100 + a in turn would mix; instead 18 triples whose d alternate: a zigzag of 1 K for the
  // first ten triples (d = 1, e = 2/3), level for the others (e = 0), joined by one triple with d = 0.5 (e =
  // 1/6).
  std::vector<double> values;
  for (int row = 0; row < 11; ++row) values.push_back(row % 2 == 0 ? 100.0 : 101.0);
  while (values.size() < 21) values.push_back(100.0);
  const std::vector<double> all = [&] {
    std::vector<double> t;
    for (std::size_t i = 0; i < values.size(); ++i) t.push_back(60.0 * static_cast<double>(i));
    return squares(t, values);
  }();
  REQUIRE(all.size() == 19);
  CHECK(level_of(MadeRecord::every(60, 21).column("TC1", values)) == close_to(all[9] / 0.4549, 1e-12));
  values.push_back(100.0);
  // 20 triples: ten of 0 and nine of 2/3 and one of 1/6; the middle two are the last 0 and 1/6.
  CHECK(level_of(MadeRecord::every(60, 22).column("TC1", values)) ==
        close_to((0.0 + 1.0 / 6.0) / 2.0 / 0.4549, 1e-12));
}

TEST_CASE("Uneven steps, large and missing readings give what the definition gives") {
  std::mt19937 chance(20310402);
  std::normal_distribution<double> scatter(0.0, 0.4);
  std::uniform_int_distribution<int> step(1, 90);
  for (const std::size_t rows : {12U, 17U, 18U, 60U, 61U, 400U}) {
    std::vector<double> t{0.0};
    std::vector<double> v{300.0};
    while (t.size() < rows) {
      t.push_back(t.back() + step(chance));
      // Rounded to what the log prints, one reading in twenty far off.
      const double off = t.size() % 20 == 0 ? 500.0 : 0.0;
      v.push_back(std::round((300.0 + 0.02 * t.back() + scatter(chance) + off) * 10.0) / 10.0);
    }
    const std::vector<double> all = squares(t, v);
    const std::size_t n = all.size();
    double expected = 0.0;
    if (n < 16) {
      for (const double e : all) expected += e / static_cast<double>(n);
    } else {
      expected = (n % 2 == 1 ? all[n / 2] : (all[n / 2 - 1] + all[n / 2]) / 2.0) / 0.4549;
    }
    CAPTURE(rows);
    CHECK(level_of(MadeRecord(t).column("TC1", v)) == Approx(expected).epsilon(1e-9));
    CHECK(level_of(MadeRecord(t).column("TC1", v).as_doubles(0.1)) == Approx(expected).epsilon(1e-6));
  }
}

TEST_CASE("Parts at even and at uneven steps count together") {
  const MadeRecord even = MadeRecord::every(60, 40).column("TC1", [] {
    std::vector<double> values;
    for (int row = 0; row < 40; ++row) values.push_back(row % 2 == 0 ? 10.0 : 10.3);  // e = 0.06
    return values;
  }());
  std::vector<double> t{0.0};
  std::vector<double> v{0.0};
  for (int row = 1; row < 101; ++row) {  // e = 9/14 with steps of 60 and 120 s in turn, see rate_test.cpp
    t.push_back(t.back() + (row % 2 == 1 ? 60 : 120));
    v.push_back(row % 2);
  }
  const Samples first(even);
  const Samples second(MadeRecord(t).column("TC1", v));
  ReadingNoise noise;
  noise.add(first.integers, 0, first.count());
  noise.add(second.integers, 0, second.count());
  // 38 of 0.06 and 99 of 9/14: the median is 9/14.
  CHECK(noise.level() == close_to(9.0 / 14.0 / 0.4549, 1e-12));
}

TEST_CASE("For normal scatter the level is its variance, whatever the steps, and spikes do not move it") {
  // 4,000 readings with a standard deviation of 0.5 K: the median of χ²(1) is known to about 3 %.
  std::mt19937 chance(7);
  std::normal_distribution<double> scatter(0.0, 0.5);
  for (const bool uneven : {false, true}) {
    std::vector<double> t{0.0};
    std::vector<double> v{300.0};
    while (t.size() < 4000) {
      t.push_back(t.back() + (uneven && t.size() % 3 == 0 ? 7.0 : 2.0));
      v.push_back(300.0 + scatter(chance) + (t.size() % 100 == 0 ? 50.0 : 0.0));
    }
    CAPTURE(uneven);
    CHECK(level_of(MadeRecord(t).column("TC1", v, 3)) == Approx(0.25).epsilon(0.12));
  }
}

TEST_CASE("A window has a level of its own where 16 triples lie within it") {
  std::vector<double> values;
  for (int row = 0; row < 60; ++row) values.push_back(row < 40 ? 100.0 : row % 2 == 0 ? 100.0 : 100.3);
  const Samples samples(MadeRecord::every(60, 60).column("TC1", values));
  CHECK_FALSE(noise_within(samples.integers, 42, 59));  // 17 readings: 15 triples
  REQUIRE(noise_within(samples.integers, 42, 60));
  CHECK(*noise_within(samples.integers, 42, 60) == close_to(0.06 / 0.4549, 1e-12));
  CHECK(*noise_within(samples.integers, 0, 40) == 0.0);
  // No window's level is above the bound.
  CHECK(noise_bound(samples.integers, 0, 60) >= *noise_within(samples.integers, 42, 60));
}
