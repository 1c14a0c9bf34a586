// SPDX-License-Identifier: GPL-3.0-or-later
// 1. straight_pieces(): the fewest straight pieces of the course -> StraightPiece
// 2. phase_runs(): rise, level, fall                             -> Run
// 3. phase_corners(): where each begins and ends                 -> Corner
// 4. measure_spread(): over every row
#include "core/phases/phases_of.h"

#include <algorithm>

#include "core/phases/phase_corners.h"
#include "core/phases/phase_runs.h"
#include "core/phases/phase_spread.h"
#include "core/phases/robust.h"
#include "core/phases/straight_pieces.h"

namespace soakwright {

namespace {

Phase::Kind kind_of(const GroupCourse& course, const std::vector<Run>& runs, std::size_t i, double level_c) {
  if (runs[i].kind == Run::Kind::rise) return Phase::Kind::heat;
  if (runs[i].kind == Run::Kind::fall) return Phase::Kind::cool;
  // A level that heating led to is a hold, however low; one before heating or after cooling is idle near
  // ambient.
  const bool reached_by_heating = i > 0 && runs[i - 1].kind == Run::Kind::rise;
  return !reached_by_heating && near_ambient(course, level_c) ? Phase::Kind::idle : Phase::Kind::hold;
}

double level_of(const GroupCourse& course, double from_s, double to_s, double otherwise) {
  std::vector<double> within;
  for (std::size_t i = 0; i < course.points(); ++i)
    if (course.times_s[i] >= from_s && course.times_s[i] <= to_s) within.push_back(course.celsius[i]);
  return within.empty() ? otherwise : median_of(std::move(within));
}

}  // namespace

std::vector<Phase> phases_of(const Record& record, const SampledRecord& sampled, const GroupCourse& course) {
  if (course.points() < 2) return {};
  const PhaseScale scale = PhaseScale::of(course, sampled.duration_s(), sampled.interval_s);
  const std::vector<Run> runs = phase_runs(course, scale, straight_pieces(course, scale));
  const std::vector<Corner> corners = phase_corners(course, runs);

  std::vector<Phase> phases;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    Phase phase;
    // The first and last phase reach to the record's own ends, though the course may be known from later on.
    phase.start_s = i == 0 ? record.begin_s() : corners[i].time_s;
    phase.end_s = i + 1 == runs.size() ? record.end_s() : corners[i + 1].time_s;
    if (phase.end_s <= phase.start_s) continue;
    phase.level_c = level_of(course, phase.start_s, phase.end_s, runs[i].start_c);
    phase.kind = kind_of(course, runs, i, phase.level_c);
    const double change_k = runs[i].ramp() ? corners[i + 1].celsius - corners[i].celsius : runs[i].change_k();
    phase.rate_c_per_h = 3600.0 * change_k / (phase.end_s - phase.start_s);
    if (!phases.empty() && phases.back().kind == phase.kind) {  // what was between them came to nothing
      Phase& before = phases.back();
      const double before_k = before.rate_c_per_h * (before.end_s - before.start_s) / 3600.0;
      before.end_s = phase.end_s;
      before.level_c = level_of(course, before.start_s, before.end_s, before.level_c);
      before.rate_c_per_h = 3600.0 * (before_k + change_k) / (before.end_s - before.start_s);
      continue;
    }
    phases.push_back(phase);
  }
  measure_spread(record, phases);
  return phases;
}

}  // namespace soakwright
