// SPDX-License-Identifier: GPL-3.0-or-later
// Lanes carried along together against the definition step by step: at every step what is gathered is
// converted to the step's temperature at equal P, then the step is added (J. H. Hollomon, L. D. Jaffe, Trans.
// AIME 162, 1945).
#include "core/measure/gathered_tempering.h"

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include <catch2/catch.hpp>

using namespace soakwright;

namespace {

/// The definition, in hours and long doubles.
double parameter_by_definition(const std::vector<double>& times_s, const std::vector<double>& celsius,
                               long double constant) {
  long double hours = 0.0L;  // gathered, at the last step's temperature
  long double last_k = 0.0L;
  for (std::size_t i = 0; i + 1 < times_s.size(); ++i) {
    const long double kelvin = (celsius[i] + celsius[i + 1]) / 2.0 + 273.15;
    // T (C + log10 t) stays the same: C + log10 t' = T/T' (C + log10 t).
    if (hours > 0.0L) hours = std::pow(10.0L, last_k / kelvin * (constant + std::log10(hours)) - constant);
    hours += (times_s[i + 1] - times_s[i]) / 3600.0L;
    last_k = kelvin;
  }
  return static_cast<double>(last_k * (constant + std::log10(hours)) / 1000.0L);
}

struct Course {
  const char* what;
  double step_s;
  double ramp_c_per_h;
  double top_c;
  double noise_k;
};

}  // namespace

TEST_CASE("lanes carried along together have the P of the definition") {
  const Course courses[] = {
      {"a second apart, hold at 600 °C", 1.0, 120.0, 600.0, 0.3},
      {"ten seconds apart, fast up to 750 °C", 10.0, 400.0, 750.0, 1.0},
      {"a minute apart, slow up to 580 °C", 60.0, 55.0, 580.0, 0.0},
      {"five minutes apart: each step a large share of what is gathered", 300.0, 220.0, 620.0, 2.0},
      {"never warm", 60.0, 5.0, 40.0, 0.5},
  };
  std::mt19937 random{20310419};
  std::normal_distribution<double> normal;
  for (const Course& course : courses) {
    INFO(course.what);
    std::vector<double> times_s;
    std::vector<std::vector<double>> columns(kTemperingLanes);
    double next_s = 0.0;
    while (next_s <= 10.0 * 3600.0) {
      times_s.push_back(next_s);
      next_s += course.step_s;
    }
    for (std::size_t lane = 0; lane < kTemperingLanes; ++lane)
      for (const double t : times_s) {
        const double up = 20.0 + course.ramp_c_per_h * t / 3600.0;
        const double down = course.top_c - 200.0 * (t / 3600.0 - 8.0);  // cools after eight hours
        columns[lane].push_back(std::max(15.0, std::min({up, course.top_c, down})) +
                                1.5 * static_cast<double>(lane) + course.noise_k * normal(random));
      }
    std::array<const double*, kTemperingLanes> starts{};
    for (std::size_t lane = 0; lane < kTemperingLanes; ++lane) starts[lane] = columns[lane].data();
    for (const double constant : {kTemperingConstant, 15.5}) {
      CAPTURE(constant);
      const auto gathered = gather_lanes(times_s, starts, constant);
      for (std::size_t lane = 0; lane < kTemperingLanes; ++lane) {
        const auto parameter = gathered[lane].parameter();
        REQUIRE(parameter);
        CHECK(*parameter == Approx(parameter_by_definition(times_s, columns[lane], constant)).epsilon(1e-11));
        GatheredTempering alone(constant);
        for (std::size_t i = 0; i + 1 < times_s.size(); ++i)
          alone.add((columns[lane][i] + columns[lane][i + 1]) / 2.0, times_s[i + 1] - times_s[i]);
        CHECK(*parameter == Approx(*alone.parameter()).epsilon(1e-13));
      }
    }
  }
}

TEST_CASE("readings that no work has do not stop the lanes beside them") {
  const std::vector<double> times_s{0.0, 60.0, 120.0, 180.0, 240.0};
  const std::vector<double> work{600.0, 600.0, 600.0, 600.0, 600.0};
  const std::vector<double> below_zero_kelvin{600.0, 600.0, -900.0, -900.0, 600.0};
  const std::vector<double> frozen{-272.0, -272.0, -272.0, -272.0, -272.0};
  std::array<const double*, kTemperingLanes> starts{};
  starts.fill(work.data());
  starts[1] = below_zero_kelvin.data();
  starts[2] = frozen.data();
  const auto gathered = gather_lanes(times_s, starts, kTemperingConstant);
  CHECK(*gathered[0].parameter() ==
        Approx(873.15 * (20.0 + std::log10(240.0 / 3600.0)) / 1000.0).epsilon(1e-13));
  CHECK(*gathered[3].parameter() == *gathered[0].parameter());
  CHECK(*gathered[2].parameter() ==
        Approx(1.15 * (20.0 + std::log10(240.0 / 3600.0)) / 1000.0).epsilon(1e-12));
  CHECK(*gathered[1].parameter() ==
        Approx(873.15 * (20.0 + std::log10(60.0 / 3600.0)) / 1000.0).epsilon(1e-12));
}
