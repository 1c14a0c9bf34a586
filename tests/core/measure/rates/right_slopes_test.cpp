// SPDX-License-Identifier: GPL-3.0-or-later
// Slopes against the outside: NIST's certified fit, the GUM's example, the closed form for even spacing, and
// a long double fit in two passes.
#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/measure/rates/all_windows.h"
#include "tests/core/measure/strd_norris.h"

using namespace soakwright;

namespace {

struct Fit {
  long double slope = 0.0L;
  long double root_sxx = 0.0L;
};

/// Ordinary least squares in two passes: means first, then centred sums.
Fit two_pass_fit(const std::vector<long double>& t, const std::vector<long double>& v) {
  const auto n = static_cast<long double>(t.size());
  const long double mean_t = std::accumulate(t.begin(), t.end(), 0.0L) / n;
  const long double mean_v = std::accumulate(v.begin(), v.end(), 0.0L) / n;
  long double sxx = 0.0L;
  long double sxy = 0.0L;
  for (std::size_t i = 0; i < t.size(); ++i) {
    sxx += (t[i] - mean_t) * (t[i] - mean_t);
    sxy += (t[i] - mean_t) * (v[i] - mean_v);
  }
  return {sxy / sxx, std::sqrt(sxx)};
}

/// The same windows by the reference, from the values that the log printed.
std::vector<Fit> reference_fits(const Traced& made, double width_s, long double times_start = 0.0L) {
  std::vector<long double> t;
  std::vector<long double> v;
  const Record& record = made.record;
  for (std::size_t row = 0; row < record.rows(); ++row)
    if (const auto celsius = record.channels[0].readings.celsius(row)) {
      t.push_back(times_start + static_cast<long double>(record.times_s[row]));
      v.push_back(static_cast<long double>(*celsius));
    }
  std::vector<Fit> fits;
  const long double half = static_cast<long double>(width_s) / 2.0L;
  constexpr long double kSlack = 1e-6L;
  for (std::size_t i = 0; i < t.size(); ++i) {
    if (t[i] - half < t.front() - kSlack || t[i] + half > t.back() + kSlack) continue;
    std::vector<long double> tw;
    std::vector<long double> vw;
    for (std::size_t k = 0; k < t.size(); ++k)
      if (std::fabs(t[k] - t[i]) <= half + kSlack) {
        tw.push_back(t[k]);
        vw.push_back(v[k]);
      }
    if (tw.size() >= kFewestForSlope) fits.push_back(two_pass_fit(tw, vw));
  }
  return fits;
}

/// The largest difference of slopes, in C/h; fails where the windows are not the same ones.
double largest_difference(const Traced& made, double width_s, long double times_start = 0.0L) {
  const std::vector<WindowSlope> windows = windows_of(made, width_s);
  const std::vector<Fit> fits = reference_fits(made, width_s, times_start);
  REQUIRE(windows.size() == fits.size());
  REQUIRE_FALSE(windows.empty());
  long double largest = 0.0L;
  for (std::size_t i = 0; i < fits.size(); ++i) {
    largest = std::max(
        largest, std::fabs(fits[i].slope * 3600.0L - static_cast<long double>(windows[i].slope_c_per_h)));
    CHECK(windows[i].root_sxx_h * 3600.0 ==
          close_to(static_cast<double>(fits[i].root_sxx), 1e-9 * static_cast<double>(fits[i].root_sxx)));
  }
  return static_cast<double>(largest);
}

/// Readings of a noisy ramp with wandering rate, on the given times.
std::vector<double> wandering(const std::vector<double>& times, std::mt19937_64& random) {
  std::normal_distribution<double> noise(0.0, 0.7);
  std::vector<double> values;
  for (const double t : times)
    values.push_back(20.0 + t / 30.0 + 15.0 * std::sin(t / 1500.0) + noise(random));
  return values;
}

std::vector<double> irregular_times(std::size_t rows, std::mt19937_64& random) {
  // Steps of 1 to 60 s in whole milliseconds.
  std::uniform_int_distribution<int> step_ms(1000, 60000);
  std::vector<double> times;
  std::int64_t at_ms = 0;
  for (std::size_t row = 0; row < rows; ++row) {
    times.push_back(static_cast<double>(at_ms) / 1000.0);
    at_ms += step_ms(random);
  }
  return times;
}

}  // namespace

TEST_CASE("NIST StRD Norris: slope and its standard deviation to the certified digits") {
  // The points as a log would hold them: x in ticks of a tenth of an hour, y in tenths of a degree, so that
  // the slope in C/h is the certified one.
  IntegerSamples samples;
  samples.tick_s = 360.0;
  samples.unit_k = 0.1;
  for (const auto& point : strd_norris::kPoints) {
    samples.own_ticks.push_back(point.x);
    samples.units.push_back(point.y);
  }
  samples.ticks = samples.own_ticks;
  const auto fit = slope_over(samples, 0, samples.ticks.size(), {0, 1});
  REQUIRE(fit);
  CHECK(fit->samples == 36);
  CHECK(fit->slope_c_per_h == close_to(strd_norris::kSlope, 1e-14));
  // Certified: s of the slope = residual s / √Sxx.
  CHECK(strd_norris::kResidualDeviation / fit->root_sxx_h == close_to(strd_norris::kSlopeDeviation, 1e-17));
  // And the residuals about that line have the certified deviation: the data are NIST's.
  double squares = 0.0;
  for (const auto& point : strd_norris::kPoints) {
    const double residual = static_cast<double>(point.y) / 10.0 - strd_norris::kIntercept -
                            fit->slope_c_per_h * static_cast<double>(point.x) / 10.0;
    squares += residual * residual;
  }
  CHECK(std::sqrt(squares / 34.0) == close_to(strd_norris::kResidualDeviation, 1e-12));
}

TEST_CASE("GUM H.3: the slope of the thermometer's correction and its standard uncertainty") {
  // JCGM 100:2008, H.3, table H.6: t in °C (here: thousandths as ticks), correction b in °C (thousandths).
  // Results from memory of table H.6's text: slope 0.00218, s(slope) 0.00067, intercept at 20 °C −0.1712.
  const std::vector<std::int64_t> t = {21521, 22012, 22512, 23003, 23507, 23999,
                                       24513, 25002, 25503, 26010, 26511};
  const std::vector<std::int64_t> b = {-171, -169, -166, -159, -164, -165, -156, -157, -159, -161, -160};
  IntegerSamples samples;
  samples.tick_s = 3.6;  // a thousandth of an hour: the slope in C/h is that per degree
  samples.unit_k = 0.001;
  samples.ticks = t;
  samples.units = b;
  const auto fit = slope_over(samples, 0, t.size(), {0, 1});
  REQUIRE(fit);
  CHECK(fit->slope_c_per_h == close_to(0.00218, 0.000005));
  double mean_t = 0.0;
  double mean_b = 0.0;
  for (std::size_t i = 0; i < t.size(); ++i) {
    mean_t += static_cast<double>(t[i]) / 1000.0 / 11.0;
    mean_b += static_cast<double>(b[i]) / 1000.0 / 11.0;
  }
  CHECK(mean_b + fit->slope_c_per_h * (20.0 - mean_t) == close_to(-0.1712, 0.00005));
  double squares = 0.0;
  for (std::size_t i = 0; i < t.size(); ++i) {
    const double residual = static_cast<double>(b[i]) / 1000.0 - mean_b -
                            fit->slope_c_per_h * (static_cast<double>(t[i]) / 1000.0 - mean_t);
    squares += residual * residual;
  }
  CHECK(std::sqrt(squares / 9.0) / fit->root_sxx_h == close_to(0.00067, 0.000005));
}

TEST_CASE("Even spacing: the standard error is (s/Δt)·√(12/(n(n² − 1)))") {
  struct Case {
    double step_s;
    std::size_t samples;
    double s_k;
  };
  // 31 points, 1 min, s = 0.5 °C: 0.60 °C/h.
  const Case cases[] = {{60, 31, 0.5}, {60, 5, 1.0}, {1, 901, 0.3}, {20, 45, 0.289}, {300, 9, 0.5}};
  for (const Case& c : cases) {
    CAPTURE(c.step_s, c.samples);
    std::vector<double> values(c.samples, 20.0);
    const Traced made(MadeRecord::every(c.step_s, c.samples).column("TC1", values), 1e6);
    const auto windows = windows_of(made, c.step_s * static_cast<double>(c.samples - 1));
    REQUIRE(windows.size() == 1);
    const auto n = static_cast<double>(c.samples);
    const double closed = c.s_k / c.step_s * 3600.0 * std::sqrt(12.0 / (n * (n * n - 1.0)));
    CHECK(c.s_k / windows[0].root_sxx_h == close_to(closed, 1e-12 * closed));
    CHECK(windows[0].slope_c_per_h == close_to(0, 1e-12));
  }
  // sqrt(12 / (31 · 960)) · 0.5 · 60 = 0.6024.
  CHECK(0.5 * 60.0 * std::sqrt(12.0 / (31.0 * 960.0)) == close_to(0.60, 0.005));
}

TEST_CASE("A straight ramp has its own slope in every window, to the last digit") {
  const Traced made(MadeRecord::every(20, 200).course("TC1", {{0, 20}, {100, 220}}, 3));
  for (const WindowSlope& window : windows_of(made, 900))
    CHECK(window.slope_c_per_h == close_to(120.0, 2e-3));
  // 0.5 °C a row of 15 s is exactly 120 °C/h in decimals.
  std::vector<double> exact;
  for (int row = 0; row < 200; ++row) exact.push_back(20.0 + 0.5 * row);
  const Traced decimals(MadeRecord::every(15, 200).column("TC1", exact));
  const auto windows = windows_of(decimals, 900);
  REQUIRE(windows.size() == 200 - 60);  // 30 rows at each end are too near it
  for (const WindowSlope& window : windows) CHECK(window.slope_c_per_h == close_to(120.0, 1e-12));
}

TEST_CASE("Slopes are right to 1e-9 C/h against a long double fit in two passes") {
  std::mt19937_64 random(20310402);
  SECTION("even steps") {
    std::vector<double> times;
    for (int row = 0; row < 600; ++row) times.push_back(20.0 * row);
    const Traced made(MadeRecord(times).column("TC1", wandering(times, random)));
    for (const double width : {300.0, 900.0, 1800.0, 3600.0, 310.0}) {
      CAPTURE(width);
      CHECK(largest_difference(made, width) < 1e-9);
    }
  }
  SECTION("irregular steps in milliseconds") {
    const std::vector<double> times = irregular_times(600, random);
    const Traced made(MadeRecord(times).column("TC1", wandering(times, random)));
    for (const double width : {300.0, 900.0, 3600.0}) {
      CAPTURE(width);
      CHECK(largest_difference(made, width) < 1e-9);
    }
  }
  SECTION("whole degrees Fahrenheit") {
    const std::vector<double> times = irregular_times(400, random);
    const Traced made(
        MadeRecord(times).column("TC1", wandering(times, random), 0, TemperatureUnit::fahrenheit));
    CHECK(largest_difference(made, 900) < 1e-9);
  }
  SECTION("missing readings") {
    std::vector<double> times;
    for (int row = 0; row < 400; ++row) times.push_back(15.0 * row);
    std::vector<double> values = wandering(times, random);
    for (std::size_t row = 7; row < 400; row += 5) values[row] = kNoReading;
    const Traced made(MadeRecord(times).column("TC1", values));
    CHECK(largest_difference(made, 900) < 1e-9);
  }
  SECTION("few rows and few readings missing, singly, side by side, and where a window ends") {
    std::vector<double> times;
    for (int row = 0; row < 900; ++row)
      if (row != 100 && row != 340 && row != 341 && row != 400 && (row < 600 || row > 609))
        times.push_back(10.0 * row);
    for (const bool readings_missing : {false, true}) {
      std::vector<double> values = wandering(times, random);
      if (readings_missing) values[250] = values[500] = values[501] = kNoReading;
      const Traced made(MadeRecord(times).column("TC1", values));
      for (const double width : {300.0, 307.0, 900.0, 1800.0, 3600.0}) {
        CAPTURE(readings_missing, width);
        CHECK(largest_difference(made, width) < 1e-9);
      }
    }
  }
  SECTION("rows a minute apart, some of them 0.4 µs late, make a fine tick of a long record") {
    std::vector<double> times;
    for (int row = 0; row < 400; ++row) times.push_back(60.0 * row + (row % 7 == 3 ? 4e-7 : 0.0));
    const Traced made(MadeRecord(times).column("TC1", wandering(times, random)));
    CHECK(largest_difference(made, 3600) < 1e-9);
  }
}

TEST_CASE("Slopes are right to 1e-9 C/h on irregular times that start at Unix-epoch seconds") {
  // Stamps in Unix milliseconds of April 2031; a record counts seconds from its first one, the reference
  // fits over the stamps as they are.
  constexpr std::int64_t kApril2031_ms = 1'933'000'000'123;
  std::mt19937_64 random(1933);
  std::uniform_int_distribution<std::int64_t> step_ms(1000, 60000);
  std::vector<std::int64_t> stamps_ms{kApril2031_ms};
  while (stamps_ms.size() < 500) stamps_ms.push_back(stamps_ms.back() + step_ms(random));
  std::vector<double> times;
  for (const std::int64_t stamp : stamps_ms)
    times.push_back(static_cast<double>(stamp - stamps_ms.front()) / 1000.0);
  const Traced made(MadeRecord(times).column("TC1", wandering(times, random)));
  for (const double width : {300.0, 900.0, 3600.0}) {
    CAPTURE(width);
    CHECK(largest_difference(made, width, static_cast<long double>(kApril2031_ms) / 1000.0L) < 1e-9);
  }
}

TEST_CASE("Readings kept as doubles have slopes as right as decimals have") {
  std::mt19937_64 random(7);
  const std::vector<double> times = irregular_times(400, random);
  const Traced made(MadeRecord(times).column("TC1", wandering(times, random)).as_doubles(0.1));
  CHECK(largest_difference(made, 900) < 1e-7);
}
