// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold for any record: a rate that is not met does not become met by adding noise, nor by leaving
// out rows beside the window that shows it. Invented records.
#include <cmath>
#include <random>

#include <catch2/catch.hpp>

#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;

namespace {

const char* const kProcedure =
    "[evaluation]\ninterpolate_max = \"10 min\"\n"
    "[[stage]]\nkind = \"heat\"\nabove = 300\nrate_max = 150\n"
    "[[stage]]\nkind = \"hold\"\nlow = 590\nhigh = 620\ntime_min = \"30 min\"\n"
    "[[stage]]\nkind = \"cool\"\nabove = 300\nrate_max = 150\n";

struct Run {
  std::vector<double> times_s;
  std::vector<std::vector<double>> columns;
  [[nodiscard]] MadeRecord made() const {
    MadeRecord record(times_s);
    for (std::size_t i = 0; i < columns.size(); ++i) record.column("TC" + std::to_string(i + 1), columns[i]);
    return record;
  }
};

/// Up at 100 °C/h and down at 100 °C/h but for one piece of either that is too fast, one to three channels.
Run random_run(std::mt19937& chance) {
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(chance);
  };
  const double fast = between(160.0, 900.0);
  const double from = between(310.0, 400.0);
  const double to = from + between(60.0, 150.0);
  const bool heats = between(0.0, 1.0) < 0.5;
  Knots course{{0, 250}};
  const auto go_to = [&](double celsius, double rate) {
    course.emplace_back(course.back().first + std::fabs(celsius - course.back().second) / rate * 60.0,
                        celsius);
  };
  go_to(from, 100);
  go_to(to, heats ? fast : 100);
  go_to(600, 100);
  course.emplace_back(course.back().first + 60, 600);
  go_to(to, 100);
  go_to(from, heats ? 100 : fast);
  go_to(200, 100);
  const double interval_s = std::round(between(5.0, 60.0));
  const std::size_t channels = 1 + static_cast<std::size_t>(between(0.0, 2.99));
  Run run;
  double next_s = 0.0;
  while (next_s <= course.back().first * 60.0) {
    run.times_s.push_back(next_s);
    next_s += interval_s;
  }
  for (std::size_t i = 0; i < channels; ++i) {
    std::vector<double> values;
    for (const double t : run.times_s) values.push_back(on_course(course, t) + static_cast<double>(i));
    run.columns.push_back(std::move(values));
  }
  return run;
}

std::vector<std::string> not_met(const Evaluated& evaluated) {
  std::vector<std::string> ids;
  for (const char* id : {"stage-1.heating-rate", "stage-3.cooling-rate"})
    if (evaluated[id].verdict == Verdict::not_met) ids.emplace_back(id);
  return ids;
}

}  // namespace

TEST_CASE("Adding noise never turns a rate that is not met into one that is met") {
  std::mt19937 chance(11);
  int held = 0;
  for (int round = 0; round < 60; ++round) {
    const Run run = random_run(chance);
    const Evaluated clean(run.made(), kProcedure);
    for (const double noise_k : {0.1, 0.5, 2.0}) {
      std::normal_distribution<double> scatter(0.0, noise_k);
      Run noisy = run;
      for (auto& column : noisy.columns)
        for (double& value : column) value += scatter(chance);
      const Evaluated evaluated(noisy.made(), kProcedure);
      for (const std::string& id : not_met(clean)) {
        CAPTURE(round, noise_k, id, clean.text(id), evaluated.text(id));
        CHECK(evaluated[id].verdict != Verdict::met);
        ++held;
      }
    }
  }
  CHECK(held > 100);
}

TEST_CASE("Leaving out rows beside the window never turns a rate that is not met into one that is met") {
  std::mt19937 chance(12);
  int held = 0;
  for (int round = 0; round < 60; ++round) {
    const Run run = random_run(chance);
    const Evaluated clean(run.made(), kProcedure);
    for (const std::string& id : not_met(clean)) {
      const Requirement& shown = clean[id];
      Run fewer;
      fewer.columns.resize(run.columns.size());
      for (std::size_t row = 0; row < run.times_s.size(); ++row) {
        const double t = run.times_s[row];
        const bool inside = t >= *shown.from_s - 1.0 && t <= *shown.to_s + 1.0;
        // Not so many that the usual step between rows changes.
        if (!inside && std::uniform_real_distribution<double>(0.0, 1.0)(chance) < 0.2) continue;
        fewer.times_s.push_back(t);
        for (std::size_t i = 0; i < run.columns.size(); ++i) fewer.columns[i].push_back(run.columns[i][row]);
      }
      const Evaluated evaluated(fewer.made(), kProcedure);
      CAPTURE(round, id, evaluated.text(id));
      CHECK(evaluated[id].verdict != Verdict::met);
      ++held;
    }
  }
  CHECK(held > 30);
}
