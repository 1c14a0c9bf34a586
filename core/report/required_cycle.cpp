// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/required_cycle.h"

#include <algorithm>
#include <string_view>
#include <variant>

#include "core/report/chart_curves.h"

namespace soakwright {
namespace {

constexpr double kSecondsPerHour = 3600.0;

const StageCourse* course_of_stage(const Verdicts& verdicts, const Requirement& requirement) {
  for (const StageCourse& stage : verdicts.stages)
    if (stage.number == requirement.stage && stage.weld == requirement.weld) return &stage;
  return nullptr;
}

template <typename Limits>
const Limits* limits_of(const Procedure& procedure, std::size_t number) {
  for (const Stage& stage : procedure.stages)
    if (stage.number == number) return std::get_if<Limits>(&stage.specified);
  return nullptr;
}

/// Of the hold that a heat stage leads to; that a cool stage comes from is of no use: it ends lower down.
std::optional<double> next_hold_low(const Procedure& procedure, std::size_t number) {
  for (const Stage& stage : procedure.stages)
    if (stage.number == number + 1)
      if (const auto* const hold = std::get_if<HoldStage>(&stage.specified)) return hold->low.celsius();
  return std::nullopt;
}

bool is_evaluated_for(const Channel& channel, const Requirement& requirement) {
  return channel.evaluated() && (!requirement.weld || !channel.weld || channel.weld == requirement.weld);
}

/// Heating: when the first thermocouple reaches the level; cooling: when the first falls to it.
std::optional<double> first_reaches(const Record& record, const Requirement& requirement, double level_c,
                                    bool heating, double from_s) {
  std::size_t end = record.end_row;
  for (const Channel& channel : record.channels) {
    if (!is_evaluated_for(channel, requirement)) continue;
    for (std::size_t row = record.first_row; row < end; ++row) {
      const auto celsius = channel.readings.celsius(row);
      if (record.times_s[row] < from_s || !celsius) continue;
      if (heating ? *celsius >= level_c : *celsius <= level_c) end = row;
    }
  }
  return end < record.end_row ? std::optional(record.times_s[end]) : std::nullopt;
}

/// Ramps are evaluated through the holds beside them as well; a line begins behind the hold, and where the
/// procedure begins to evaluate.
std::optional<double> start_of(const Analysis& analysis, const Requirement& requirement,
                               const RampStage& ramp, double start_s) {
  for (const StageCourse& hold : analysis.verdicts->stages)
    if (std::string_view{hold.kind} == "hold" && hold.weld == requirement.weld && hold.end_s &&
        hold.number < requirement.stage)
      start_s = std::max(start_s, *hold.end_s);
  const bool heating = ramp.direction == RampStage::Direction::heat;
  const auto& level = heating ? ramp.above : ramp.below;
  return level ? first_reaches(*analysis.record, requirement, level->celsius(), heating, start_s)
               : std::optional(start_s);
}

/// The hottest evaluated reading at the moment; the coldest where `heating` is false.
std::optional<double> level_at_start(const Analysis& analysis, const Requirement& requirement, double at_s,
                                     bool heating) {
  std::optional<double> level;
  for (const BetweenChannel& one : measure_between(analysis, nullptr, at_s, at_s).channels) {
    if (!one.from_c || !is_evaluated_for(analysis.record->channels[one.channel], requirement)) continue;
    if (!level)
      level = one.from_c;
    else
      level = heating ? std::max(*level, *one.from_c) : std::min(*level, *one.from_c);
  }
  return level;
}

/// Where the line ends: the end of the evaluated part, as the procedure has it.
std::optional<double> last_level(const Procedure& procedure, const RampStage& ramp, std::size_t number) {
  if (ramp.direction == RampStage::Direction::cool)
    return ramp.above ? std::optional(ramp.above->celsius()) : std::nullopt;
  return ramp.below ? std::optional(ramp.below->celsius()) : next_hold_low(procedure, number);
}

std::optional<RequiredRamp> ramp_of(const Analysis& analysis, std::size_t index) {
  const Requirement& requirement = analysis.verdicts->requirements[index];
  const bool heating = requirement.kind == RequirementKind::heating_rate;
  const StageCourse* const course = course_of_stage(*analysis.verdicts, requirement);
  const auto* const specified = limits_of<RampStage>(*analysis.procedure, requirement.stage);
  if (course == nullptr || specified == nullptr || !course->start_s || !course->end_s ||
      requirement.limit <= 0.0)
    return std::nullopt;
  const auto from_s = start_of(analysis, requirement, *specified, *course->start_s);
  if (!from_s) return std::nullopt;
  const auto from_c = level_at_start(analysis, requirement, *from_s, heating);
  if (!from_c) return std::nullopt;
  RequiredRamp ramp{index, *from_s, *course->end_s, *from_c, *from_c};
  const double slope = (heating ? 1.0 : -1.0) * requirement.limit / kSecondsPerHour;
  if (const auto to_c = last_level(*analysis.procedure, *specified, requirement.stage)) {
    ramp.to_c = *to_c;
    ramp.to_s = ramp.from_s + (*to_c - *from_c) / slope;
  } else {
    ramp.to_c = *from_c + slope * (ramp.to_s - ramp.from_s);
  }
  return ramp.to_s > ramp.from_s ? std::optional(ramp) : std::nullopt;
}

std::optional<RequiredHold> hold_of(const Analysis& analysis, std::size_t index) {
  const Requirement& requirement = analysis.verdicts->requirements[index];
  const StageCourse* const course = course_of_stage(*analysis.verdicts, requirement);
  const auto* const specified = limits_of<HoldStage>(*analysis.procedure, requirement.stage);
  if (course == nullptr || specified == nullptr) return std::nullopt;
  std::optional<double> from_s;
  if (course->continuous)
    from_s = course->continuous->first;
  else if (!course->in_range.empty())
    from_s = course->in_range.front().first;
  if (!from_s) return std::nullopt;
  return RequiredHold{index, *from_s, *from_s + requirement.limit, specified->low.celsius(),
                      specified->high ? std::optional(specified->high->celsius()) : std::nullopt};
}

}  // namespace

RequiredCycle required_cycle(const Analysis& analysis) {
  RequiredCycle cycle;
  if (!analysis.verdicts || !analysis.procedure) return cycle;
  for (std::size_t i = 0; i < analysis.verdicts->requirements.size(); ++i) {
    const RequirementKind kind = analysis.verdicts->requirements[i].kind;
    if (kind == RequirementKind::heating_rate || kind == RequirementKind::cooling_rate) {
      if (const auto ramp = ramp_of(analysis, i)) cycle.ramps.push_back(*ramp);
    } else if (kind == RequirementKind::hold_time) {
      if (const auto hold = hold_of(analysis, i)) cycle.holds.push_back(*hold);
    }
  }
  return cycle;
}

}  // namespace soakwright
