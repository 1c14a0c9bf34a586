// What the procedure asked, as it stands on the chart: bands of holds, ceilings, levels, the stages' times.
#include <algorithm>

#include <fmt/format.h>

#include "core/report/sections.h"

namespace soakwright {
namespace {

const StageCourse* course_of_stage(const Verdicts* verdicts, const std::optional<std::string>& weld,
                                   std::size_t number) {
  if (verdicts == nullptr) return nullptr;
  for (const StageCourse& course : verdicts->stages)
    if (course.number == number && course.weld == weld) return &course;
  return nullptr;
}

/// The welds that the stages were judged for; one without a name where nothing was judged.
std::vector<std::optional<std::string>> judged_welds(const Analysis& analysis) {
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

std::optional<double> celsius(const std::optional<Temperature>& temperature) {
  return temperature ? std::optional{temperature->celsius()} : std::nullopt;
}

void add_level(std::vector<ChartLevel>& levels, ChartLevel level) {
  for (ChartLevel& known : levels) {
    if (known.kind != level.kind || known.level_c != level.level_c) continue;
    known.from_s = std::min(known.from_s, level.from_s);
    known.to_s = std::max(known.to_s, level.to_s);
    return;
  }
  levels.push_back(std::move(level));
}

/// A ramp is judged through the holds beside it as well; on the chart it stands between them.
std::optional<TimeSpan> shown_span(const StageCourse& course, const Analysis& analysis) {
  if (!course.start_s || !course.end_s) return std::nullopt;
  TimeSpan span{*course.start_s, *course.end_s};
  if (course.kind == "hold") return course.core ? std::optional{span} : std::nullopt;
  for (const StageCourse& hold : analysis.verdicts->stages) {
    if (hold.kind != "hold" || hold.weld != course.weld || !hold.core || !hold.start_s || !hold.end_s)
      continue;
    if (hold.number < course.number) span.first = std::max(span.first, *hold.end_s);
    if (hold.number > course.number) span.second = std::min(span.second, *hold.start_s);
  }
  return span.second > span.first ? std::optional{span} : std::nullopt;
}

ChartSegment::Kind segment_kind(const Stage& stage) {
  if (const auto* ramp = std::get_if<RampStage>(&stage.asked))
    return ramp->direction == RampStage::Direction::heat ? ChartSegment::Kind::heat
                                                         : ChartSegment::Kind::cool;
  return std::holds_alternative<HoldStage>(stage.asked) ? ChartSegment::Kind::hold : ChartSegment::Kind::keep;
}

}  // namespace

std::vector<ChartBand> chart_bands(const Telling& telling) {
  std::vector<ChartBand> bands;
  const Analysis& analysis = telling.analysis;
  const Record& record = *analysis.record;
  if (!analysis.procedure || record.end_row <= record.first_row) return bands;
  const auto welds = judged_welds(analysis);
  for (const Stage& stage : analysis.procedure->stages) {
    for (const auto& weld : welds) {
      ChartBand band;
      band.stage = stage.number;
      band.weld = weld;
      band.from_s = record.begin_s();
      band.to_s = record.end_s();
      if (const auto* hold = std::get_if<HoldStage>(&stage.asked)) {
        band.low_c = hold->low.celsius();
        band.high_c = celsius(hold->high);
        const StageCourse* course = course_of_stage(analysis.verdicts.get(), weld, stage.number);
        if (course != nullptr && course->core && course->start_s && course->end_s) {
          band.from_s = *course->start_s;
          band.to_s = *course->end_s;
          band.reached = true;
        }
      } else if (const auto* keep = std::get_if<KeepStage>(&stage.asked)) {
        band.low_c = keep->low.celsius();
        band.high_c = celsius(keep->high);
        for (const Period& period : record.periods)
          if (period.name == keep->during) {
            band.from_s = period.from_s;
            band.to_s = period.to_s;
            band.reached = true;
          }
      } else {
        continue;
      }
      band.text = fmt::format("{} {}{}", stage_title(analysis.procedure.get(), stage.number),
                              telling.say.band(band.low_c, band.high_c), of_weld(weld, welds.size()));
      bands.push_back(std::move(band));
    }
  }
  return bands;
}

std::vector<ChartLevel> chart_levels(const Telling& telling) {
  std::vector<ChartLevel> levels;
  const Analysis& analysis = telling.analysis;
  const Record& record = *analysis.record;
  if (!analysis.procedure || record.end_row <= record.first_row) return levels;
  const PrintedNumbers& say = telling.say;
  const double begin_s = record.begin_s();
  const double end_s = record.end_s();
  const WholeRecordLimits& whole = analysis.procedure->whole_record;
  const auto whole_level = [&](ChartLevel::Kind kind, const std::optional<Temperature>& limit,
                               const char* name) {
    if (limit)
      add_level(levels, {kind, limit->celsius(), begin_s, end_s,
                         fmt::format("{} {}", name, say.asked_temperature(limit->celsius()))});
  };
  whole_level(ChartLevel::Kind::ceiling, whole.ceiling, "ceiling");
  whole_level(ChartLevel::Kind::start_max, whole.start_max, "at loading at most");
  whole_level(ChartLevel::Kind::end_max, whole.end_max, "at opening at most");

  for (const Stage& stage : analysis.procedure->stages) {
    const auto* ramp = std::get_if<RampStage>(&stage.asked);
    if (ramp == nullptr) continue;
    for (const auto& weld : judged_welds(analysis)) {
      const StageCourse* course = course_of_stage(analysis.verdicts.get(), weld, stage.number);
      const double from_s = course != nullptr && course->start_s ? *course->start_s : begin_s;
      const double to_s = course != nullptr && course->end_s ? *course->end_s : end_s;
      const auto add = [&](ChartLevel::Kind kind, const std::optional<Temperature>& limit, const char* name) {
        if (limit)
          add_level(levels, {kind, limit->celsius(), from_s, to_s,
                             fmt::format("{} {}", name, say.asked_temperature(limit->celsius()))});
      };
      add(ChartLevel::Kind::judged_above, ramp->above, "rates judged above");
      add(ChartLevel::Kind::judged_below, ramp->below, "rates judged below");
    }
  }
  return levels;
}

std::vector<ChartSegment> chart_stages(const Telling& telling) {
  std::vector<ChartSegment> segments;
  const Analysis& analysis = telling.analysis;
  if (!analysis.procedure || !analysis.verdicts) return segments;
  const std::size_t welds = judged_welds(analysis).size();
  for (const StageCourse& course : analysis.verdicts->stages) {
    const auto span = shown_span(course, analysis);
    if (!span) continue;
    for (const Stage& stage : analysis.procedure->stages) {
      if (stage.number != course.number) continue;
      std::string text = stage_title(analysis.procedure.get(), stage.number);
      if (course.weld && welds > 1) text = fmt::format("{}: {}", *course.weld, text);
      if (std::holds_alternative<HoldStage>(stage.asked) && course.core)
        text += fmt::format(" {}", rounded_duration(course.core->second - course.core->first));
      segments.push_back({segment_kind(stage), course.weld, span->first, span->second, std::move(text)});
    }
  }
  return segments;
}

}  // namespace soakwright
