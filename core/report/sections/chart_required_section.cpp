// SPDX-License-Identifier: GPL-3.0-or-later
// What the procedure requires, on the chart: ranges of holds, maximum temperatures, levels, the times of the
// stages.
#include <algorithm>

#include <fmt/format.h>

#include "core/report/sections/sections.h"
#include "core/wording/sections/chart_words.h"

namespace soakwright {
namespace {

std::string range_text(const ChartRange& range, const PrintedNumbers& say) {
  return say.range(Temperature::of_celsius(range.low_c),
                   range.high_c ? std::optional{Temperature::of_celsius(*range.high_c)} : std::nullopt);
}

const StageCourse* course_of_stage(const Verdicts* verdicts, const std::optional<std::string>& weld,
                                   std::size_t number) {
  if (verdicts == nullptr) return nullptr;
  for (const StageCourse& course : verdicts->stages)
    if (course.number == number && course.weld == weld) return &course;
  return nullptr;
}

/// The welds that the stages were evaluated for; one without a name where nothing was evaluated.
std::vector<std::optional<std::string>> evaluated_welds(const Analysis& analysis) {
  std::vector<std::optional<std::string>> welds;
  if (analysis.verdicts)
    for (const StageCourse& course : analysis.verdicts->stages)
      if (std::find(welds.begin(), welds.end(), course.weld) == welds.end()) welds.push_back(course.weld);
  if (welds.empty()) welds.push_back(std::nullopt);
  return welds;
}

std::string of_weld(const std::optional<std::string>& weld, std::size_t welds) {
  return weld && welds > 1 ? fmt::format(", {}", *weld) : std::string{};
}

void add_level(std::vector<ChartLevel>& levels, ChartLevel level) {
  for (ChartLevel& known : levels) {
    if (known.kind != level.kind || known.level_c != level.level_c) continue;
    known.from_s = std::min(known.from_s, level.from_s);
    known.to_s = std::max(known.to_s, level.to_s);
    for (const std::size_t stage : level.stages)
      if (std::find(known.stages.begin(), known.stages.end(), stage) == known.stages.end())
        known.stages.push_back(stage);
    return;
  }
  levels.push_back(std::move(level));
}

/// A ramp is evaluated through the holds beside it as well; on the chart it stands between them.
std::optional<TimeSpan> shown_span(const StageCourse& course, const Analysis& analysis) {
  if (!course.start_s || !course.end_s) return std::nullopt;
  TimeSpan span{*course.start_s, *course.end_s};
  if (course.kind == "hold") return course.continuous ? std::optional{span} : std::nullopt;
  for (const StageCourse& hold : analysis.verdicts->stages) {
    if (hold.kind != "hold" || hold.weld != course.weld || !hold.continuous || !hold.start_s || !hold.end_s)
      continue;
    if (hold.number < course.number) span.first = std::max(span.first, *hold.end_s);
    if (hold.number > course.number) span.second = std::min(span.second, *hold.start_s);
  }
  return span.second > span.first ? std::optional{span} : std::nullopt;
}

ChartSegment::Kind segment_kind(const Stage& stage) {
  if (const auto* ramp = std::get_if<RampStage>(&stage.specified))
    return ramp->direction == RampStage::Direction::heat ? ChartSegment::Kind::heat
                                                         : ChartSegment::Kind::cool;
  return std::holds_alternative<HoldStage>(stage.specified) ? ChartSegment::Kind::hold
                                                            : ChartSegment::Kind::maintain;
}

}  // namespace

std::vector<ChartRange> chart_ranges(const ReportContext& context) {
  std::vector<ChartRange> ranges;
  const Analysis& analysis = context.analysis;
  const Record& record = *analysis.record;
  if (!analysis.procedure || record.end_row <= record.first_row) return ranges;
  const auto welds = evaluated_welds(analysis);
  for (const Stage& stage : analysis.procedure->stages) {
    for (const auto& weld : welds) {
      ChartRange range;
      range.stage = stage.number;
      range.weld = weld;
      range.from_s = record.begin_s();
      range.to_s = record.end_s();
      if (const auto* hold = std::get_if<HoldStage>(&stage.specified)) {
        range.low_c = hold->low.celsius();
        range.high_c = celsius_if_any(hold->high);
        const StageCourse* course = course_of_stage(analysis.verdicts.get(), weld, stage.number);
        if (course != nullptr && course->continuous && course->start_s && course->end_s) {
          range.from_s = *course->start_s;
          range.to_s = *course->end_s;
          range.reached = true;
        }
      } else if (const auto* maintain = std::get_if<MaintainStage>(&stage.specified)) {
        range.low_c = maintain->low.celsius();
        range.high_c = celsius_if_any(maintain->high);
        for (const Period& period : record.periods)
          if (period.name == maintain->during) {
            range.from_s = period.from_s;
            range.to_s = period.to_s;
            range.reached = true;
          }
      } else {
        continue;
      }
      range.text = fmt::format("{} {}{}", stage_title(analysis.procedure.get(), stage.number),
                               range_text(range, context.say), of_weld(weld, welds.size()));
      ranges.push_back(std::move(range));
    }
  }
  return ranges;
}

std::vector<ChartLevel> chart_levels(const ReportContext& context) {
  std::vector<ChartLevel> levels;
  const Analysis& analysis = context.analysis;
  const Record& record = *analysis.record;
  if (!analysis.procedure || record.end_row <= record.first_row) return levels;
  const PrintedNumbers& say = context.say;
  const double begin_s = record.begin_s();
  const double end_s = record.end_s();
  const RecordLimits& whole = analysis.procedure->record_limits;
  using Words = std::string (*)(const std::string&);
  const auto whole_level = [&](ChartLevel::Kind kind, const std::optional<Temperature>& limit, Words text) {
    if (limit) add_level(levels, {kind, limit->celsius(), begin_s, end_s, text(say.limit(*limit))});
  };
  whole_level(ChartLevel::Kind::temperature_max, whole.temperature_max, chart_words::maximum);
  whole_level(ChartLevel::Kind::start_temperature_max, whole.start_temperature_max,
              chart_words::start_at_most);
  whole_level(ChartLevel::Kind::end_temperature_max, whole.end_temperature_max, chart_words::end_at_most);

  for (const Stage& stage : analysis.procedure->stages) {
    const auto* ramp = std::get_if<RampStage>(&stage.specified);
    if (ramp == nullptr) continue;
    for (const auto& weld : evaluated_welds(analysis)) {
      const StageCourse* course = course_of_stage(analysis.verdicts.get(), weld, stage.number);
      const double from_s = course != nullptr && course->start_s ? *course->start_s : begin_s;
      const double to_s = course != nullptr && course->end_s ? *course->end_s : end_s;
      const auto add = [&](ChartLevel::Kind kind, const std::optional<Temperature>& limit, Words text) {
        if (limit)
          add_level(levels, {kind, limit->celsius(), from_s, to_s, text(say.limit(*limit)), {stage.number}});
      };
      add(ChartLevel::Kind::evaluated_above, ramp->above, chart_words::rates_above);
      add(ChartLevel::Kind::evaluated_below, ramp->below, chart_words::rates_below);
    }
  }
  return levels;
}

std::vector<ChartSegment> chart_stages(const ReportContext& context) {
  std::vector<ChartSegment> segments;
  const Analysis& analysis = context.analysis;
  if (!analysis.procedure || !analysis.verdicts) return segments;
  const std::size_t welds = evaluated_welds(analysis).size();
  for (const StageCourse& course : analysis.verdicts->stages) {
    const auto span = shown_span(course, analysis);
    if (!span) continue;
    for (const Stage& stage : analysis.procedure->stages) {
      if (stage.number != course.number) continue;
      std::string text = stage_title(analysis.procedure.get(), stage.number);
      if (course.weld && welds > 1) text = fmt::format("{}: {}", *course.weld, text);
      if (std::holds_alternative<HoldStage>(stage.specified) && course.continuous)
        text +=
            fmt::format(" {}", context.say.duration(course.continuous->second - course.continuous->first));
      segments.push_back({segment_kind(stage), course.weld, span->first, span->second, std::move(text)});
    }
  }
  return segments;
}

}  // namespace soakwright
