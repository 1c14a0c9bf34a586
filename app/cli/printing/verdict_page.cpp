// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/printing/verdict_page.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "app/cli/printing/file_sections.h"
#include "app/cli/printing/page_text.h"

namespace soakwright::cli {
namespace {

Tint tint_of_finding(Finding::Kind kind) {
  switch (kind) {
    case Finding::Kind::not_met:
      return Tint::bad;
    case Finding::Kind::inconclusive:
      return Tint::doubtful;
    case Finding::Kind::note:
      return Tint::faint;
  }
  return Tint::none;
}

void requirement_table(PageText& page, const Report& report) {
  std::vector<Row> rows;
  std::string group;
  for (const RequirementRow& row : report.requirements) {
    const std::string stage = row.weld.empty() ? row.stage : row.weld + ", " + row.stage;
    if (stage != group) rows.push_back({Cell{stage, Tint::strong}});
    group = stage;
    rows.push_back({"  " + row.label, row.limit, row.measured, row.margin, row.uncertainty, row.where,
                    row.when, Cell{row.verdict_text, tint_of(row.verdict)}});
  }
  page.heading("Requirements");
  page.table({"", "Limit", "Measured", "Margin", "U", "Thermocouple", "When", "Verdict"}, rows);
}

/// By how much each requirement is missed.
void shortfalls(PageText& page, const Report& report) {
  const bool any = std::any_of(report.requirements.begin(), report.requirements.end(),
                               [](const RequirementRow& row) { return !row.shortfall.empty(); });
  if (!any) return;
  page.heading("Shortfall");
  for (const RequirementRow& row : report.requirements)
    if (!row.shortfall.empty())
      page.paragraph({row.weld.empty() ? row.id : row.weld + " " + row.id, tint_of(row.verdict)},
                     row.shortfall);
}

void uncertainties(PageText& page, const Report& report) {
  if (report.budgets.empty()) return;
  page.heading("Uncertainty (U, k = 2)");
  for (const BudgetTable& table : report.budgets) {
    std::string text;
    for (std::size_t i = 0; i < table.columns.size(); ++i)
      text += (i == 0 ? "" : "; ") + table.expanded[i] + " at " + table.columns[i];
    page.paragraph({table.channels}, text + "; rates: " + table.rate);
  }
}

void findings(PageText& page, const Report& report) {
  if (report.findings.empty()) return;
  page.heading("Findings");
  for (const std::size_t finding : findings_by_number(report)) {
    const FindingRow& row = report.findings[finding];
    page.paragraph(
        {row.tag.empty() ? row.kind_text : row.tag + "  " + row.kind_text, tint_of_finding(row.kind)},
        row.text);
    std::string place = row.id;
    for (const std::string& part : {row.weld, row.where, row.when, row.disposition})
      if (!part.empty()) place += (place.empty() ? "" : ", ") + part;
    if (!place.empty()) page.line("      " + place, Tint::faint);
  }
}

/// Where the limits come from; a stage is named where it has a source of its own.
std::vector<LabelledText> sources(const ProcedureSection& procedure) {
  std::vector<LabelledText> facts;
  if (!procedure.source.empty()) facts.push_back({"Limits from", procedure.source});
  for (const RequiredStage& stage : procedure.stages)
    if (!stage.source.empty() && stage.source != procedure.source)
      facts.push_back({stage.title, stage.source});
  return facts;
}

/// Each finding that is not met or inconclusive, for somebody who is learning.
void explanations(PageText& page, const Report& report) {
  page.heading("Explanations");
  for (const std::size_t finding : findings_by_number(report)) {
    const FindingRow& row = report.findings[finding];
    if (!row.explanation) continue;
    const Explanation& explanation = *row.explanation;
    page.line(
        "  " + row.tag + (row.tag.empty() ? "" : "  ") + row.id + (row.where.empty() ? "" : ", " + row.where),
        Tint::strong);
    std::string causes;
    for (const std::string& cause : explanation.causes) causes += (causes.empty() ? "" : "; ") + cause;
    page.facts({{"    Required", explanation.required},
                {"    Shown", explanation.shown},
                {"    Why", explanation.why + " (" + explanation.why_source + ")"},
                {"    Usual causes", causes},
                {"    Check first", explanation.look_first},
                {"    Would settle it", explanation.would_help},
                {"    Source", explanation.mark}});
  }
}

}  // namespace

std::string verdict_page(const Report& report, const PageStyle& style, bool explained) {
  PageText page(style);
  page.line(report.subject, Tint::strong);
  std::vector<LabelledText> about = report.job;
  about.insert(about.end(), report.record.begin(), report.record.end());
  page.facts(about);
  if (report.procedure) {
    page.heading("Procedure");
    std::vector<LabelledText> facts = report.procedure->facts;
    for (LabelledText& fact : sources(*report.procedure)) facts.push_back(std::move(fact));
    page.facts(facts);
  }
  requirement_table(page, report);
  findings(page, report);
  if (explained) explanations(page, report);
  suspects(page, report);
  shortfalls(page, report);
  uncertainties(page, report);
  if (!report.heat_summary.empty()) {
    page.heading("What the heat did");
    page.facts(report.heat_summary);
  }
  if (!report.replaced.empty() || !report.exclusion.empty()) {
    page.heading("Manual changes");
    for (const auto& rows : {report.replaced, report.exclusion})
      for (const HandRow& row : rows) page.paragraph({row.channel}, row.when + ": " + row.text);
  }
  preheat_and_bands(page, report);
  not_evaluated(page, report);
  file_warnings(page, report);
  if (!report.first_deviation.empty()) {
    page.heading("First deviation");
    page.paragraph({""}, report.first_deviation);
  }
  page.heading("Cautions");
  for (const std::string& caution : report.cautions) page.paragraph({"-"}, caution);
  if (report.welds.size() > 1) {
    page.heading("Welds");
    for (const WeldRow& row : report.welds) page.paragraph({row.number}, row.verdict_text);
  }
  page.blank_line();
  page.line("Verdict: " + report.verdict_text, report.verdict ? tint_of(*report.verdict) : Tint::none);
  page.line(report.verdict_sentence);
  if (!report.draft.empty()) page.line(report.draft);
  return page.str();
}

}  // namespace soakwright::cli
