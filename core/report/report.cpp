// SPDX-License-Identifier: GPL-3.0-or-later
// The order of a report:
//  1. whom and what it is about, and the verdict
//  2. requirements, findings
//  3. the chart
//  4. thermocouple by thermocouple
//  5. the record by itself, how it was read
//  6. how it was measured, cautions, files, signatures
#include "core/report/report.h"

#include <algorithm>
#include <utility>

#include "core/report/open_findings.h"
#include "core/report/sections/sections.h"
#include "core/wording/cautions.h"
#include "core/wording/exclusion_words.h"
#include "core/wording/method_notes.h"
#include "core/wording/sections/certificate_words.h"
#include "core/wording/sections/report_words.h"
#include "core/wording/sections/review_words.h"

namespace soakwright {
namespace {

TemperatureUnit unit_for(const Analysis& analysis, const ReportOptions& options) {
  if (options.unit) return *options.unit;
  if (analysis.procedure) return analysis.procedure->unit;
  for (const Channel& channel : analysis.record->channels)
    if (channel.evaluated())
      return channel.unit == ChannelUnit::fahrenheit ? TemperatureUnit::fahrenheit : TemperatureUnit::celsius;
  return TemperatureUnit::celsius;
}

std::string verdict_sentence(const ReportContext& context) {
  const Analysis& analysis = context.analysis;
  if (!analysis.verdicts) return report_words::nothing_evaluated() + excluded_sentence(context);
  const auto& requirements = analysis.verdicts->requirements;
  const auto having = [&](Verdict verdict) {
    return static_cast<std::size_t>(
        std::count_if(requirements.begin(), requirements.end(),
                      [&](const Requirement& r) { return r.verdict == verdict; }));
  };
  return certificate_words::counted(having(Verdict::met), having(Verdict::not_met),
                                    having(Verdict::inconclusive)) +
         excluded_sentence(context);
}

}  // namespace

std::vector<std::size_t> findings_by_number(const Report& report) {
  std::vector<std::size_t> ordered;
  ordered.reserve(report.findings.size());
  for (const EventRow& event : report.events)
    ordered.insert(ordered.end(), event.findings.begin(), event.findings.end());
  return ordered;
}

Report make_report(const Analysis& analysis, const ReportOptions& options) {
  const PrintedNumbers say{unit_for(analysis, options), *analysis.record};
  const ReportContext context{{analysis, say}, first_deviations(analysis)};
  Report report;
  report.unit = say.unit();
  report.program = options.program_version.empty() ? "Soakwright" : "Soakwright " + options.program_version;
  report.unsaved = options.unsaved;
  report.title = report_words::title(analysis.procedure.get());
  report.chart = chart_section(context);
  report.subject = report.chart.title;
  if (analysis.job && analysis.job->contractor) report.author = *analysis.job->contractor;
  if (analysis.verdicts) {
    report.verdict = analysis.verdicts->verdict;
    report.verdict_text = verdict_text(analysis.verdicts->verdict);
  }
  report.verdict_sentence = verdict_sentence(context);
  if (const FirstDeviation* first = earliest_of(context.deviations))
    report.first_deviation = deviation_text(context, *first);

  report.job = job_facts(context);
  report.record = record_facts(context);
  for (LabelledText& fact : suspect_facts(context)) report.record.push_back(std::move(fact));
  if (analysis.procedure) report.procedure = procedure_section(context);
  report.preheat = preheat_section(context);
  report.bands = band_section(context);
  report.welds = weld_rows(context);
  report.requirements = requirement_rows(context, report.chart);
  report.guarded = std::any_of(report.requirements.begin(), report.requirements.end(),
                               [](const RequirementRow& row) { return !row.uncertainty.empty(); });
  report.findings = finding_rows(context, report.requirements);
  add_events(context, report);
  report.draft = draft_text(open_findings(analysis).size());
  report.holds = hold_tables(context);
  report.rates = rate_tables(context);
  report.budgets = budget_tables(context);
  for (RequirementRow& row : report.requirements)
    row.budgets = budgets_behind(analysis.verdicts->requirements[row.requirement], report.budgets);
  report.heat = heat_tables(context);
  report.heat_summary = heat_summary(context);
  report.channels = channel_rows(context, report.chart);
  report.phases = phase_rows(context);
  report.suspects = suspect_rows(context);
  report.replaced = replaced_rows(context);
  report.exclusion = exclusion_rows(context);
  report.remarks = remark_rows(context);
  report.reading = reading_facts(context);
  report.heading = analysis.record->reading.heading;
  report.other_columns = other_column_texts(*analysis.record);
  report.notices = notice_rows(context);
  report.methods = method_notes(context);
  report.cautions = caution_texts(context);
  report.fingerprints = fingerprint_rows(context);
  report.signatures = signature_places(context);
  report.paper = options.paper;
  report.company = letterhead(analysis);
  if (!options.company_picture.empty()) report.company.picture = options.company_picture;
  if (analysis.job) report.report_number = analysis.job->report_number.value_or(std::string{});
  report.certificates = certificates(context, report, options.both_units);
  report.previous_records = previous_reports(context, options);
  return report;
}

}  // namespace soakwright
