// SPDX-License-Identifier: GPL-3.0-or-later
// Records made by a formula, evaluated by the real evaluate, for the tests of the report and of the pdf: a
// heat treatment of drum D-3 with what may go wrong put in on demand. No file is read.
#pragma once

#include <algorithm>
#include <cmath>
#include <memory>
#include <string>
#include <vector>

#include "core/evaluate/analysis.h"
#include "core/evaluate/evaluation.h"
#include "core/procedure/job/job_file.h"
#include "core/procedure/procedure_file.h"

namespace soakwright {

struct MadeUpRun {
  std::size_t channels = 4;
  double interval_s = 60.0;
  double rate_c_per_h = 130.0;  ///< heating
  double hold_s = 2.0 * 3600.0;
  double spread_k = 8.0;  ///< between the first and the last channel in the hold
  double noise_k = 0.1;
  bool clock = true;
  bool excursion = false;   ///< 20 min at a steeper rate, on the way up
  bool dip = false;         ///< the last channel leaves the range in the hold for 9 min
  bool hole = false;        ///< no readings of the first channel for 20 min of the hold
  bool ends_early = false;  ///< the record ends 50 min into the hold
  bool hot = false;         ///< one channel goes over the temperature_max
};

inline std::string made_up_procedure() {
  return R"(soakwright = "procedure 1"
number = "HTP-021"
revision = "C"
title = "Stress relief of 38 mm drum nozzle seams"
unit = "C"
thickness = "38 mm"
source = "Invented for this test"
edition = "2031"
clause = "4.2"
flag = "memory"
[record]
temperature_max = 650
start_temperature_max = 300
gap_max = "5 min"
sampling_interval_max = "60 s"
thermocouples_min = 1
[[stage]]
kind = "heat"
above = 300
rate_max = { over = 5500, per = "mm", at_least = 55, at_most = 220 }
spread_max = 150
[[stage]]
kind = "hold"
low = 590
high = 620
time_min = "95 min"
excursion_time_max = "0 s"
spread_max = 30
[[stage]]
kind = "cool"
above = 300
rate_max = { over = 6875, per = "mm", at_least = 55, at_most = 275 }
)";
}

inline std::string made_up_job() {
  return R"(soakwright = "job 1"
work = "Steam drum D-3, nozzle N2 to shell"
weld = "W-117"
client = "Saltmarsh Heat & Power, Port Ellery"
contractor = "Brackwater Fabrication"
material = "P265GH"
drawing = "D-3-104 rev 2"
equipment = "Resistance mats, console 4"
)";
}

/// Noise that is the same on every machine: a linear congruential generator (Numerical Recipes' constants).
class SmallNoise {
 public:
  explicit SmallNoise(std::uint32_t seed) : state_(seed) {}
  double operator()() {
    state_ = state_ * 1664525u + 1013904223u;
    return static_cast<double>(state_ >> 8) / 8388608.0 - 1.0;
  }

 private:
  std::uint32_t state_;
};

/// The course that all channels follow: 20 C, up to 605 C, held, down at 150 C/h.
inline double made_up_course(const MadeUpRun& run, double at_s) {
  constexpr double kStart_c = 20.0;
  constexpr double kHold_c = 605.0;
  double heated_s = at_s;
  if (run.excursion && at_s > 10'000.0) heated_s += 0.6 * std::min(at_s - 10'000.0, 1'200.0);
  const double up_s = (kHold_c - kStart_c) / run.rate_c_per_h * 3600.0;
  if (heated_s <= up_s) return kStart_c + run.rate_c_per_h * heated_s / 3600.0;
  const double over_s = heated_s - up_s - run.hold_s;
  if (over_s <= 0.0) return kHold_c;
  return std::max(kStart_c, kHold_c - 150.0 * over_s / 3600.0);
}

inline std::shared_ptr<Record> made_up_record(const MadeUpRun& run) {
  auto record = std::make_shared<Record>();
  record->file = "d3-n2.csv";
  record->sha256 = "3b1f6c0f6a0f4d3bb0c8f5f1f7a4ce1a9d7e22b3a55b6c7d8e9f00112233445a";
  record->bytes = 123'456;
  if (run.clock) record->clock = RecorderClock::dated(LocalTime::of({2031, 4, 2}, 6, 0, 0).value());
  record->interval_s = run.interval_s;
  record->reading.encoding.value = "utf-8";
  record->reading.delimiter.value = "comma";
  record->reading.decimal.value = "point";
  record->reading.dates = {"dmy", SettingBy::given};
  record->reading.time.value = run.clock ? "date and time" : "elapsed seconds";
  record->reading.header_line.value = 3;
  record->reading.heading = {"Recorder: console 4", "Operator: Ines Okafor"};

  const double up_s = 585.0 / run.rate_c_per_h * 3600.0;
  const double end_s = run.ends_early ? up_s + 3'000.0 : up_s + run.hold_s + 13'000.0;
  double next_s = 0.0;
  while (next_s <= end_s) {
    record->times_s.push_back(next_s);
    next_s += run.interval_s;
  }
  record->end_row = record->times_s.size();

  for (std::size_t c = 0; c < run.channels; ++c) {
    SmallNoise noise(static_cast<std::uint32_t>(17 + c));
    const double place =
        run.channels < 2 ? 0.0 : static_cast<double>(c) / static_cast<double>(run.channels - 1) - 0.5;
    std::vector<double> celsius;
    Channel channel;
    channel.column = c + 2;
    channel.name = "TC" + std::to_string(c + 1);
    for (const double at_s : record->times_s) {
      // Each lags a little behind the course, the later ones more, and stands off it in proportion.
      const double lag_s = 60.0 + 240.0 * (place + 0.5);
      double value = made_up_course(run, std::max(0.0, at_s - lag_s));
      value += run.spread_k * place * value / 605.0;
      if (run.dip && c + 1 == run.channels && at_s > up_s + 2'400.0 && at_s < up_s + 2'940.0) value -= 22.0;
      if (run.hot && c == 0 && at_s > up_s + 3'600.0 && at_s < up_s + 4'500.0) value += 52.0;
      value = std::round((value + run.noise_k * noise()) * 10.0) / 10.0;
      const bool missing = run.hole && c == 0 && at_s > up_s + 3'000.0 && at_s < up_s + 4'200.0;
      celsius.push_back(missing ? std::nan("") : value);
      if (missing) continue;
      channel.min_c = std::min(channel.min_c.value_or(value), value);
      channel.max_c = std::max(channel.max_c.value_or(value), value);
    }
    channel.readings = Readings::of_celsius(std::move(celsius), 0.1);
    record->channels.push_back(std::move(channel));
  }
  return record;
}

/// The phases of the formula, as a finder would give them.
inline std::shared_ptr<Course> made_up_phases(const MadeUpRun& run, const Record& record) {
  auto course = std::make_shared<Course>();
  const double up_s = std::min(585.0 / run.rate_c_per_h * 3600.0, record.times_s.back());
  const double held_s = std::min(up_s + run.hold_s, record.times_s.back());
  course->phases.push_back({Phase::Kind::heat, 0.0, up_s, run.rate_c_per_h, 310.0, run.spread_k});
  if (held_s > up_s) course->phases.push_back({Phase::Kind::hold, up_s, held_s, 0.0, 605.0, run.spread_k});
  if (record.times_s.back() > held_s)
    course->phases.push_back({Phase::Kind::cool, held_s, record.times_s.back(), -150.0, 330.0, run.spread_k});
  return course;
}

/// Evaluates what is there again; call it after a change to record, procedure or job.
inline void evaluate_made_up(Analysis& analysis) {
  analysis.verdicts =
      std::make_shared<Verdicts>(evaluate(*analysis.record, *analysis.procedure, analysis.job.get()));
}

inline Analysis made_up_analysis(const MadeUpRun& run = {}) {
  Analysis analysis;
  const auto record = made_up_record(run);
  analysis.record = record;
  analysis.course = made_up_phases(run, *record);
  auto procedure = parse_procedure(made_up_procedure(), "procedures/htp-021.toml");
  procedure.value().sha256 = "aa00000000000000000000000000000000000000000000000000000000000001";
  analysis.procedure = std::make_shared<Procedure>(std::move(procedure).value());
  auto job = parse_job(made_up_job(), "d3-n2.toml");
  job.value().sha256 = "bb00000000000000000000000000000000000000000000000000000000000002";
  analysis.job = std::make_shared<Job>(std::move(job).value());
  evaluate_made_up(analysis);
  return analysis;
}

}  // namespace soakwright
