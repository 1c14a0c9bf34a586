// SPDX-License-Identifier: GPL-3.0-or-later
// The chart's traces and what stands on the time axis: phases, periods, findings, remarks, take-overs.
#include <fmt/format.h>

#include "core/report/sections/sections.h"
#include "core/wording/exclusion_words.h"
#include "core/wording/sections/chart_words.h"

namespace soakwright {
namespace {

ChartTrace::Role role_of(const Channel& channel) {
  switch (channel.role) {
    case ThermocoupleRole::control:
    case ThermocoupleRole::monitor:
      return channel.zone == Zone::edge ? ChartTrace::Role::edge : ChartTrace::Role::evaluated;
    case ThermocoupleRole::spare:
      return ChartTrace::Role::spare;
    case ThermocoupleRole::air:
      return ChartTrace::Role::air;
    case ThermocoupleRole::set_point:
      return ChartTrace::Role::set_point;
    case ThermocoupleRole::off:
      return ChartTrace::Role::off;
  }
  return ChartTrace::Role::evaluated;
}

ChartSegment::Kind segment_kind(Phase::Kind kind) {
  switch (kind) {
    case Phase::Kind::heat:
      return ChartSegment::Kind::heat;
    case Phase::Kind::hold:
      return ChartSegment::Kind::hold;
    case Phase::Kind::cool:
      return ChartSegment::Kind::cool;
    case Phase::Kind::idle:
      return ChartSegment::Kind::idle;
  }
  return ChartSegment::Kind::idle;
}

std::optional<std::size_t> trace_index(const Chart& chart, const std::string& name) {
  for (std::size_t i = 0; i < chart.traces.size(); ++i)
    if (chart.traces[i].name == name) return i;
  return std::nullopt;
}

std::optional<std::size_t> trace_of_channel(const Chart& chart, std::size_t channel) {
  for (std::size_t i = 0; i < chart.traces.size(); ++i)
    if (chart.traces[i].channel == channel) return i;
  return std::nullopt;
}

void add_marks(Chart& chart, const ReportContext& context) {
  if (!context.analysis.verdicts) return;
  const std::vector<Finding>& findings = context.analysis.verdicts->findings;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const Finding& finding = findings[i];
    if (!finding.from_s && !finding.to_s) continue;
    ChartMark mark;
    mark.finding = i;
    mark.kind = finding.kind;
    mark.tag = fmt::format("{}", i + 1);
    if (finding.channel) mark.trace = trace_index(chart, *finding.channel);
    mark.from_s = finding.from_s.value_or(*(finding.to_s ? finding.to_s : finding.from_s));
    mark.to_s = finding.to_s.value_or(mark.from_s);
    mark.level_c = extreme_temperature(finding);
    chart.marks.push_back(std::move(mark));
  }
}

}  // namespace

Chart chart_section(const ReportContext& context) {
  const Record& record = *context.analysis.record;
  const PrintedNumbers& say = context.say;
  Chart chart;
  chart.record = context.analysis.record;
  chart.unit = say.unit();
  chart.has_days = record.clock.kind() != RecorderClock::Kind::elapsed;
  chart.title = chart_words::title(context.analysis.job.get(), record);
  chart.time_axis = chart_words::time_axis(record.clock.kind());
  chart.temperature_axis = chart_words::temperature_axis(say);
  if (record.rows() > 0) {
    chart.begin_s = record.times_s.front();
    chart.end_s = record.times_s.back();
    chart.evaluated_from_s = record.end_row > record.first_row ? record.begin_s() : chart.begin_s;
    chart.evaluated_to_s = record.end_row > record.first_row ? record.end_s() : chart.end_s;
  }
  constexpr double kGapIntervals = 3.0;  // with nothing asked, what the reader calls a gap
  chart.interpolate_max_s = context.analysis.procedure
                                ? interpolate_max_for(*context.analysis.procedure, record.interval_s)
                                : kGapIntervals * record.interval_s;

  for (std::size_t i = 0; i < record.channels.size(); ++i) {
    const Channel& channel = record.channels[i];
    const Job* job = context.analysis.job.get();
    chart.traces.push_back({i, fmt::format("{}", i + 1), channel.name,
                            chart_words::legend(channel, record) + excluded_legend(record, job, i),
                            role_of(channel), channel.readings, is_taken_out(record, job, i)});
  }
  chart.ranges = chart_ranges(context);
  chart.levels = chart_levels(context);
  chart.stages = chart_stages(context);
  if (context.analysis.course)
    for (const Phase& phase : context.analysis.course->phases)
      chart.phases.push_back({segment_kind(phase.kind), std::nullopt, phase.start_s, phase.end_s,
                              chart_words::phase(phase, say)});
  for (const Period& period : record.periods)
    chart.periods.push_back(
        {ChartSegment::Kind::period, std::nullopt, period.from_s, period.to_s, period.name});
  add_marks(chart, context);
  for (const Remark& remark : record.remarks)
    chart.remarks.push_back({remark.at_s, std::nullopt, remark.text});
  if (context.analysis.verdicts)
    for (const Replacement& replacement : context.analysis.verdicts->replaced)
      chart.takeovers.push_back({replacement.from_s, trace_index(chart, replacement.channel),
                                 chart_words::takeover(replacement.by, replacement.channel)});
  if (const FirstDeviation* first = earliest_of(context.deviations))
    chart.deviations.push_back({first->at_s, std::nullopt, chart_words::first_deviation()});
  for (const Exclusion& exclusion : record.exclusions)
    if (const auto trace = trace_of_channel(chart, exclusion.channel))
      chart.exclusions.push_back({*trace, exclusion.from_s, exclusion.to_s});
  return chart;
}

}  // namespace soakwright
