// SPDX-License-Identifier: GPL-3.0-or-later
// The previous records of the same welds, each told as a report of its own.
#include <fmt/format.h>

#include "core/report/sections/sections.h"

namespace soakwright {
namespace {

/// The cycle of the record at `index`; this job's own record follows the last previous one.
int cycle_at(const Analysis& analysis, std::size_t index) {
  return index < analysis.previous_records.size() ? analysis.previous_records[index].cycle
                                                  : cycle_of(*analysis.job);
}

/// The previous record as the analysis of one record, with no review and no record before it.
Analysis by_itself(const PreviousRecord& one, const Analysis& analysis) {
  Analysis alone{one.record, one.course, one.job, analysis.procedure, nullptr, one.verdicts, one.ground};
  if (!one.job) return alone;
  auto job = std::make_shared<Job>(*one.job);
  job->cycle = one.cycle;
  alone.job = std::move(job);
  return alone;
}

}  // namespace

std::string previous_title(const Analysis& analysis, std::size_t index) {
  const int cycle = cycle_at(analysis, index);
  std::size_t first = index;
  while (first > 0 && cycle_at(analysis, first - 1) == cycle) --first;
  const bool whole = first == index && cycle_at(analysis, index + 1) != cycle;
  return whole ? fmt::format("Cycle {}", cycle) : fmt::format("Cycle {}, part {}", cycle, index - first + 1);
}

std::vector<std::shared_ptr<const Report>> previous_reports(const ReportContext& context,
                                                            const ReportOptions& options) {
  std::vector<std::shared_ptr<const Report>> reports;
  const Analysis& analysis = context.analysis;
  ReportOptions in_this_unit = options;
  in_this_unit.unit = context.say.unit();
  for (std::size_t i = 0; i < analysis.previous_records.size(); ++i) {
    const PreviousRecord& one = analysis.previous_records[i];
    Report report = make_report(by_itself(one, analysis), in_this_unit);
    report.subject = fmt::format("{}: {}", previous_title(analysis, i), one.record->file);
    report.chart.title = report.subject;
    reports.push_back(std::make_shared<const Report>(std::move(report)));
  }
  return reports;
}

}  // namespace soakwright
