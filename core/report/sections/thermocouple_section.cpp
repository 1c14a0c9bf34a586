// SPDX-License-Identifier: GPL-3.0-or-later
// Thermocouple by thermocouple: its course through each hold, its overall rate through each ramp.
#include <algorithm>
#include <limits>

#include <fmt/format.h>

#include "core/measure/extremes.h"
#include "core/measure/holds/hold_time.h"
#include "core/measure/traces/prepared_traces.h"
#include "core/report/sections/sections.h"
#include "core/wording/sections/certificate_words.h"
#include "core/wording/sections/course_words.h"

namespace soakwright {
namespace {

const Stage* find_stage(const Procedure* procedure, std::size_t number) {
  if (procedure == nullptr) return nullptr;
  for (const Stage& stage : procedure->stages)
    if (stage.number == number) return &stage;
  return nullptr;
}

std::vector<LabelledText> hold_facts(const StageCourse& course, const PrintedNumbers& say) {
  std::vector<LabelledText> facts;
  facts.push_back(course_words::continuous_hold(course.continuous, say));
  if (course.start_s && course.end_s)
    facts.push_back(course_words::hold_period(*course.start_s, *course.end_s, say));
  if (course.in_range.size() > 1) facts.push_back(course_words::times_in_range(course.in_range, say));
  if (!course.edge_crossings.empty())
    facts.push_back(course_words::edges_crossed(course.edge_crossings, say));
  return facts;
}

HoldPeriods periods_of(const Verdicts& verdicts, const StageCourse& course) {
  HoldPeriods periods;
  for (const StageCourse& other : verdicts.stages) {
    if (other.kind != "hold" || other.weld != course.weld || !other.start_s || !other.end_s) continue;
    const Span period{*other.start_s, *other.end_s};
    if (other.number < course.number) periods.before = period;
    if (other.number == course.number) periods.own = period;
    if (other.number > course.number && !periods.after) periods.after = period;
  }
  return periods;
}

/// Thermocouples at the edge of the heated band are held to no range; when they were in it and what they read
/// in the hold period is shown.
void add_edge_rows(const ReportContext& context, const StageCourse& course, const HoldStage& hold,
                   HoldTable& table) {
  const Analysis& analysis = context.analysis;
  if (!analysis.ground || !course.start_s || !course.end_s) return;
  const TraceSet& set = analysis.ground->set;
  for (std::size_t i = 0; i < analysis.record->channels.size() && i < set.of_channel.size(); ++i) {
    const Channel& channel = analysis.record->channels[i];
    const bool on_work =
        channel.role == ThermocoupleRole::control || channel.role == ThermocoupleRole::monitor;
    if (!on_work || channel.zone != Zone::edge || set.of_channel[i] == TraceSet::npos) continue;
    if (course.weld && channel.weld && channel.weld != course.weld) continue;
    const Trace& trace = set.traces[set.of_channel[i]];
    const auto read = summary_of(trace, {{*course.start_s, *course.end_s}});
    const auto spans =
        range_spans(trace, hold.low.celsius(),
                    hold.high ? hold.high->celsius() : std::numeric_limits<double>::infinity());
    const InAndOut times = in_and_out_of_hold(spans, periods_of(*analysis.verdicts, course),
                                              {analysis.record->begin_s(), analysis.record->end_s()});
    HoldTable::Row row{certificate_words::at_edge(channel.name),
                       times.in_s ? context.say.moment(*times.in_s) : "never",
                       times.out_s ? context.say.moment(*times.out_s) : "–",
                       "–",
                       "–",
                       "–"};
    if (read) {
      row.minimum = context.say.bare_temperature(read->min_c, 0);
      row.maximum = context.say.bare_temperature(read->max_c, 0);
      row.mean = context.say.bare_temperature(read->mean_c, 1);
    }
    table.rows.push_back(std::move(row));
  }
}

using RatesByChannel = std::vector<std::pair<std::string, std::optional<double>>>;

/// Evaluated thermocouples, then those at the edge of the heated band, under names that say so.
RatesByChannel with_edge(RatesByChannel rates, const RatesByChannel& of_edge) {
  for (const auto& [name, rate] : of_edge) rates.emplace_back(certificate_words::at_edge(name), rate);
  return rates;
}

void add_column(RateTable& table, std::string heading, const RatesByChannel& rates,
                const PrintedNumbers& say) {
  table.columns.push_back(std::move(heading));
  for (const auto& [name, rate] : rates) {
    auto row = std::find_if(table.rows.begin(), table.rows.end(),
                            [&name = name](const RateTable::Row& r) { return r.name == name; });
    if (row == table.rows.end()) {
      table.rows.push_back({name, {}});
      row = table.rows.end() - 1;
    }
    row->rates.resize(table.columns.size(), "–");
    if (rate) row->rates.back() = say.bare_rate(*rate);
  }
  for (RateTable::Row& row : table.rows) row.rates.resize(table.columns.size(), "–");
}

}  // namespace

std::vector<HoldTable> hold_tables(const ReportContext& context) {
  std::vector<HoldTable> tables;
  const Verdicts* verdicts = context.analysis.verdicts.get();
  if (verdicts == nullptr) return tables;
  const PrintedNumbers& say = context.say;
  for (const StageCourse& course : verdicts->stages) {
    const Stage* stage = find_stage(context.analysis.procedure.get(), course.number);
    const auto* hold = stage == nullptr ? nullptr : std::get_if<HoldStage>(&stage->specified);
    if (hold == nullptr) continue;
    HoldTable table;
    table.stage = course.number;
    table.weld = weld_text(course.weld);
    table.title = fmt::format("{} {}", stage_title(context.analysis.procedure.get(), course.number),
                              say.range(hold->low, hold->high));
    table.facts = hold_facts(course, say);
    for (const StageChannel& channel : course.channels) {
      HoldTable::Row row;
      row.name = channel.name;
      row.in = channel.in_s ? say.moment(*channel.in_s) : "never";
      row.out = channel.out_s ? say.moment(*channel.out_s) : "–";
      row.minimum = channel.min_c ? say.bare_temperature(*channel.min_c, 0) : "–";
      row.maximum = channel.max_c ? say.bare_temperature(*channel.max_c, 0) : "–";
      row.mean = channel.mean_c ? say.bare_temperature(*channel.mean_c, 1) : "–";
      table.rows.push_back(std::move(row));
    }
    add_edge_rows(context, course, *hold, table);
    tables.push_back(std::move(table));
  }
  return tables;
}

std::vector<RateTable> rate_tables(const ReportContext& context) {
  std::vector<RateTable> tables;
  const Verdicts* verdicts = context.analysis.verdicts.get();
  if (verdicts == nullptr) return tables;

  for (const Requirement& requirement : verdicts->requirements) {
    if (requirement.overall.empty()) continue;
    const std::string weld = weld_text(requirement.weld);
    auto table =
        std::find_if(tables.begin(), tables.end(), [&](const RateTable& t) { return t.weld == weld; });
    if (table == tables.end()) {
      tables.push_back({weld, {}, {}});
      table = tables.end() - 1;
    }
    const std::string stage = stage_title(context.analysis.procedure.get(), requirement.stage);
    if (!requirement.steepest.empty())
      add_column(*table,
                 certificate_words::steepest_column(stage, context.say.duration(requirement.window_s)),
                 with_edge(requirement.steepest, requirement.edge_steepest), context.say);
    // A stage with a largest and a smallest rate carries the same overall rates twice.
    const std::string overall = certificate_words::overall_column(stage);
    if (std::find(table->columns.begin(), table->columns.end(), overall) == table->columns.end())
      add_column(*table, overall, with_edge(requirement.overall, requirement.edge_overall), context.say);
  }
  return tables;
}

}  // namespace soakwright
