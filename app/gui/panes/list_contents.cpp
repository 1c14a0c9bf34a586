// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/list_contents.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "app/gui/texts/window_text.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

/// Nothing is said of a record that there is not.
QString no_record() { return tr("No record. Open a log (Ctrl+O)."); }

/// Those without a place on the time axis come last.
void sort_by_time(std::vector<std::size_t>& findings, const Report& report) {
  std::vector<double> begins_s(report.findings.size(), std::numeric_limits<double>::infinity());
  for (const ChartMark& mark : report.chart.marks)
    if (mark.finding < begins_s.size())
      begins_s[mark.finding] = std::min(begins_s[mark.finding], mark.from_s);
  std::stable_sort(findings.begin(), findings.end(),
                   [&begins_s](std::size_t a, std::size_t b) { return begins_s[a] < begins_s[b]; });
}

}  // namespace

ListContent requirement_lines(const Report* report) {
  ListContent content;
  content.headers = {tr("Verdict"),  tr("Requirement"), tr("Stage"),       tr("Weld"),         tr("Limit"),
                     tr("Measured"), tr("Margin"),      tr("Uncertainty"), tr("Thermocouple"), tr("When")};
  content.numbers = {4, 5, 6, 7};
  content.stretch = 9;
  content.when_empty = report
                           ? tr("Not evaluated yet: open a procedure (Ctrl+Shift+O) to evaluate this record.")
                           : no_record();
  if (!report) return content;
  for (std::size_t i = 0; i < report->requirements.size(); ++i) {
    const RequirementRow& row = report->requirements[i];
    content.lines.push_back(
        {{pdf::shown_text(row.verdict_text), pdf::shown_text(row.label), pdf::shown_text(row.stage),
          pdf::shown_text(row.weld), pdf::shown_text(row.limit), pdf::shown_text(row.measured),
          pdf::shown_text(row.margin), pdf::shown_text(row.uncertainty), pdf::shown_text(row.where),
          pdf::shown_text(row.brief_when)},
         sign_of(row.verdict),
         i});
  }
  std::stable_sort(content.lines.begin(), content.lines.end(),
                   [report](const ListLine& a, const ListLine& b) {
                     return report->requirements[a.index].verdict > report->requirements[b.index].verdict;
                   });
  return content;
}

ListContent finding_lines(const Report* report, FindingOrder order) {
  ListContent content;
  content.headers = {tr("Finding"),      tr("No."),  tr("Requirement"), tr("Stage"),   tr("Weld"),
                     tr("Thermocouple"), tr("When"), tr("Worst value"), tr("Finding"), tr("Review")};
  content.numbers = {1, 7};
  content.stretch = 8;
  content.when_empty = !report           ? no_record()
                       : report->verdict ? tr("No findings.")
                                         : tr("Findings need a procedure.");
  if (!report) return content;
  std::vector<std::size_t> findings = findings_by_number(*report);
  if (order == FindingOrder::time) sort_by_time(findings, *report);
  for (const std::size_t i : findings) {
    const FindingRow& row = report->findings[i];
    content.lines.push_back(
        {{pdf::shown_text(row.kind_text), pdf::shown_text(row.tag), pdf::shown_text(row.label),
          pdf::shown_text(row.stage), pdf::shown_text(row.weld), pdf::shown_text(row.where),
          pdf::shown_text(row.brief_when), pdf::shown_text(row.extreme), pdf::shown_text(row.text),
          pdf::shown_text(row.disposition)},
         sign_of(row.kind),
         i});
  }
  return content;
}

ListContent deviation_lines(const Report* report) {
  ListContent content;
  content.headers = {tr("When"), tr("Thermocouple"), tr("Requirement"), tr("Recorded"), tr("Check first")};
  content.stretch = 3;
  content.when_empty = !report           ? no_record()
                       : report->verdict ? tr("No deviation: every limit is met.")
                                         : tr("Deviations need a procedure.");
  if (!report) return content;
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < report->findings.size(); ++i)
    if (report->findings[i].explanation) order.push_back(i);
  sort_by_time(order, *report);
  if (!report->first_deviation.empty()) {
    ListLine first;
    first.cells = {tr("First deviation: %1").arg(pdf::shown_text(report->first_deviation))};
    first.heading = true;
    content.lines.push_back(std::move(first));
  }
  for (const std::size_t i : order) {
    const FindingRow& row = report->findings[i];
    // The rest of the explanation is beside the list once a line is chosen.
    content.lines.push_back(
        {{pdf::shown_text(row.brief_when), pdf::shown_text(row.where), pdf::shown_text(row.label),
          pdf::shown_text(row.text), pdf::shown_text(row.explanation->look_first)},
         sign_of(row.kind),
         i});
  }
  return content;
}

ListContent phase_lines(const Report* report) {
  ListContent content;
  content.headers = {tr("Phase"), tr("From"),          tr("To"), tr("Duration"), tr("Mean rate"),
                     tr("Level"), tr("Largest spread")};
  content.numbers = {3, 4, 5, 6};
  content.when_empty = report ? tr("No phases were found in this record.") : no_record();
  if (!report) return content;
  for (std::size_t i = 0; i < report->phases.size(); ++i) {
    const PhaseRow& row = report->phases[i];
    content.lines.push_back({{pdf::shown_text(row.kind), pdf::shown_text(row.start), pdf::shown_text(row.end),
                              pdf::shown_text(row.duration), pdf::shown_text(row.rate),
                              pdf::shown_text(row.level), pdf::shown_text(row.spread)},
                             {},
                             i});
  }
  return content;
}

ListContent suspect_lines(const Report* report) {
  ListContent content;
  content.headers = {tr("Suspect"), tr("Channel"), tr("When"), tr("Recorded cycle")};
  content.stretch = 3;
  content.when_empty =
      report
          ? tr("No suspect thermocouple. Suspects are warnings; the program never excludes a thermocouple.")
          : no_record();
  if (!report) return content;
  for (std::size_t i = 0; i < report->suspects.size(); ++i) {
    const SuspectRow& row = report->suspects[i];
    content.lines.push_back({{pdf::shown_text(row.code), pdf::shown_text(row.channel),
                              pdf::shown_text(row.when), pdf::shown_text(row.text)},
                             {},
                             i});
  }
  return content;
}

ListContent notice_lines(const Report* report) {
  ListContent content;
  content.headers = {tr("File warning"), tr("Line"), tr("Count"), tr("Channel"), tr("Value")};
  content.numbers = {1, 2};
  content.stretch = 4;
  content.when_empty = report ? tr("No file warnings.") : no_record();
  if (!report) return content;
  for (std::size_t i = 0; i < report->notices.size(); ++i) {
    const NoticeRow& row = report->notices[i];
    content.lines.push_back(
        {{pdf::shown_text(row.code), pdf::shown_text(row.line), pdf::shown_text(row.count),
          pdf::shown_text(row.channel), pdf::shown_text(row.text)},
         {},
         i});
  }
  return content;
}

}  // namespace soakwright::gui
