// SPDX-License-Identifier: GPL-3.0-or-later
// What evaluating costs, on a record of 86,400 rows and 24 channels made here: evaluating again after a
// changed limit (nothing is read again, nothing that no limit changes is measured again), the first
// evaluating, and phases with suspects. tests/bench/run compares the medians with what must be reached.
#include <cstdlib>
#include <random>
#include <string>
#include <vector>

#include <benchmark/benchmark.h>

#include "core/evaluate/evaluation.h"
#include "core/phases/course.h"
#include "core/procedure/job/job_file.h"
#include "core/procedure/procedure_file.h"
#include "tests/core/measure/made_record.h"

namespace {

using namespace soakwright;

constexpr std::size_t kRows = 86'400;
constexpr std::size_t kChannels = 24;

/// A day: up to 605 °C, four hours held, down again; each channel a little later than the one before, with
/// noise.
const Record& day_record() {
  static const Record record = [] {
    MadeRecord made = MadeRecord::every(1.0, kRows);
    std::mt19937 chance(20310402);
    std::normal_distribution<double> noise(0.0, 0.2);
    for (std::size_t channel = 0; channel < kChannels; ++channel) {
      const double late = 0.5 * static_cast<double>(channel);
      const Knots course{{60 + late, 20}, {560 + late, 605}, {800 + late, 605}, {1'300 + late, 60}};
      std::vector<double> values;
      values.reserve(kRows);
      for (std::size_t row = 0; row < kRows; ++row)
        values.push_back(on_course(course, static_cast<double>(row)) + noise(chance));
      const std::string name = "TC" + std::to_string(channel + 1);
      made.column(name, std::move(values)).entry(name, channel);
    }
    return made.record();
  }();
  return record;
}

/// Type and class of every thermocouple, and the recorder's accuracy.
const Job& day_job() {
  static const Job job = [] {
    std::string text = "soakwright = \"job 1\"\n[recorder]\naccuracy = \"±1.0 C\"\n";
    for (std::size_t channel = 1; channel <= kChannels; ++channel)
      text += "[[thermocouple]]\ncolumn = \"TC" + std::to_string(channel) +
              "\"\ntype = \"K\"\ntolerance = \"class 1\"\n";
    auto read = parse_job(text, "job.toml");
    if (!read) std::abort();
    return std::move(read).value();
  }();
  return job;
}

/// Every kind of limit that such a run has; `rate` is the one that changes.
Procedure procedure_with(const std::string& rate, const std::string& evaluation = {}) {
  auto read = parse_procedure(
      "soakwright = \"procedure 1\"\nnumber = \"HTP-021\"\nunit = \"C\"\n" + evaluation +
          "[record]\ntemperature_max = 650\n"
          "gap_max = \"5 min\"\nthermocouples_min = 4\n[[stage]]\nkind = \"heat\"\nabove = 300\nrate_max = " +
          rate +
          "\nspread_max = 100\n[[stage]]\nkind = \"hold\"\nlow = 590\nhigh = 620\ntime_min = \"95 min\"\n"
          "excursion_time_max = \"0 s\"\nspread_max = 30\n[[stage]]\nkind = \"cool\"\nabove = 300\nrate_max "
          "= "
          "180\n"
          "spread_max = 100\n",
      "htp-021.toml");
  if (!read) std::abort();
  return std::move(read).value();
}

void evaluate_again(benchmark::State& state) {
  const Record& record = day_record();
  const Procedure limits[] = {procedure_with("140"), procedure_with("60")};
  const auto ground = prepared_traces_for(record, limits[0], nullptr);
  std::size_t turn = 0;
  for (auto _ : state) {
    const Verdicts verdicts = evaluate(record, limits[turn++ % 2], nullptr, *ground);
    benchmark::DoNotOptimize(verdicts.requirements.data());
  }
}
BENCHMARK(evaluate_again)->Unit(benchmark::kMillisecond)->MinTime(2.0);

constexpr const char* kGuarded = "[evaluation]\ndecision_rule = \"guarded\"\n";

void evaluate_again_guarded(benchmark::State& state) {
  const Record& record = day_record();
  const Procedure limits[] = {procedure_with("140", kGuarded), procedure_with("60", kGuarded)};
  const auto ground = prepared_traces_for(record, limits[0], nullptr);
  std::size_t turn = 0;
  for (auto _ : state) {
    const Verdicts verdicts = evaluate(record, limits[turn++ % 2], &day_job(), *ground);
    benchmark::DoNotOptimize(verdicts.requirements.data());
  }
}
BENCHMARK(evaluate_again_guarded)->Unit(benchmark::kMillisecond)->MinTime(2.0);

/// Phases, suspects, the prepared_traces and a guarded evaluation with its alternatives.
void everything_guarded(benchmark::State& state) {
  const Record& record = day_record();
  const Procedure procedure = procedure_with("140", kGuarded);
  for (auto _ : state) {
    const Course course = course_of(record);
    const Verdicts verdicts = evaluate(record, procedure, &day_job());
    benchmark::DoNotOptimize(course.phases.data());
    benchmark::DoNotOptimize(verdicts.requirements.data());
  }
}
BENCHMARK(everything_guarded)->Unit(benchmark::kMillisecond)->MinTime(2.0);

void evaluate_first(benchmark::State& state) {
  const Record& record = day_record();
  const Procedure procedure = procedure_with("140");
  for (auto _ : state) {
    const Verdicts verdicts = evaluate(record, procedure, nullptr);
    benchmark::DoNotOptimize(verdicts.requirements.data());
  }
}
BENCHMARK(evaluate_first)->Unit(benchmark::kMillisecond)->MinTime(2.0);

void phases_and_suspects(benchmark::State& state) {
  const Record& record = day_record();
  for (auto _ : state) {
    const Course course = course_of(record);
    benchmark::DoNotOptimize(course.phases.data());
  }
}
BENCHMARK(phases_and_suspects)->Unit(benchmark::kMillisecond)->MinTime(2.0);

}  // namespace

BENCHMARK_MAIN();
