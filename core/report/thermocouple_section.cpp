// SPDX-License-Identifier: GPL-3.0-or-later
// Thermocouple by thermocouple: its course through each hold, its overall rate through each ramp.
#include <algorithm>

#include <fmt/format.h>

#include "core/report/sections.h"

namespace soakwright {
namespace {

const Stage* find_stage(const Procedure* procedure, std::size_t number) {
  if (procedure == nullptr) return nullptr;
  for (const Stage& stage : procedure->stages)
    if (stage.number == number) return &stage;
  return nullptr;
}

std::string spans_text(const std::vector<TimeSpan>& spans, const PrintedNumbers& say) {
  constexpr std::size_t kMost = 6;
  std::string text;
  for (std::size_t i = 0; i < spans.size() && i < kMost; ++i) {
    if (i > 0) text += "; ";
    text += fmt::format("{} ({})", say.span(spans[i].first, spans[i].second),
                        say.duration(spans[i].second - spans[i].first));
  }
  if (spans.size() > kMost) text += fmt::format("; and {} more", spans.size() - kMost);
  return text;
}

std::vector<LabelledText> hold_facts(const StageCourse& course, const PrintedNumbers& say) {
  std::vector<LabelledText> facts;
  if (course.continuous)
    facts.push_back({"Continuous hold",
                     fmt::format("{} ({})", say.span(course.continuous->first, course.continuous->second),
                                 say.duration(course.continuous->second - course.continuous->first))});
  else
    facts.push_back({"Continuous hold", "none: the thermocouples were never all in range together"});
  if (course.start_s && course.end_s)
    facts.push_back({"Hold period", say.span(*course.start_s, *course.end_s)});
  if (course.in_range.size() > 1) facts.push_back({"Times in range", spans_text(course.in_range, say)});
  if (!course.edge_crossings.empty())
    facts.push_back({"Edges of the range crossed", spans_text(course.edge_crossings, say)});
  return facts;
}

}  // namespace

std::vector<HoldTable> hold_tables(const ReportContext& context) {
  std::vector<HoldTable> tables;
  const Verdicts* verdicts = context.analysis.verdicts.get();
  if (verdicts == nullptr) return tables;
  const PrintedNumbers& say = context.say;
  for (const StageCourse& course : verdicts->stages) {
    const Stage* stage = find_stage(context.analysis.procedure.get(), course.number);
    const auto* hold = stage == nullptr ? nullptr : std::get_if<HoldStage>(&stage->asked);
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
    const std::string column = stage_title(context.analysis.procedure.get(), requirement.stage);
    // A stage with a largest and a smallest rate carries the same overall rates twice.
    if (std::find(table->columns.begin(), table->columns.end(), column) != table->columns.end()) continue;
    table->columns.push_back(column);
    for (const auto& [name, rate] : requirement.overall) {
      auto row = std::find_if(table->rows.begin(), table->rows.end(),
                              [&name = name](const RateTable::Row& r) { return r.name == name; });
      if (row == table->rows.end()) {
        table->rows.push_back({name, {}});
        row = table->rows.end() - 1;
      }
      row->rates.resize(table->columns.size(), "–");
      if (rate) row->rates.back() = context.say.bare_rate(*rate);
    }
    for (RateTable::Row& row : table->rows) row.rates.resize(table->columns.size(), "–");
  }
  return tables;
}

}  // namespace soakwright
