// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/report_pages.h"

#include "app/pdf/page_sections.h"

namespace soakwright::pdf {

std::vector<Page> report_pages(const std::shared_ptr<const Report>& report, Scale scale) {
  PageFlow flow(scale);
  put_front(flow, *report);
  put_welds(flow, *report);
  put_requirements(flow, *report);
  put_findings(flow, *report);
  if (!report->verdict) {
    // Of a record that is only looked at, this is the answer.
    put_course(flow, *report);
    put_channels(flow, *report);
  }
  put_chart(flow, report);
  put_evidence(flow, report);
  put_holds(flow, report);
  put_rates(flow, *report);
  put_heat(flow, *report);
  put_budgets(flow, *report);
  put_explanations(flow, *report);
  if (report->verdict) {
    put_channels(flow, *report);
    put_procedure(flow, *report);
    put_course(flow, *report);
  }
  put_reading(flow, *report);
  put_methods(flow, *report);
  put_cautions(flow, *report);
  put_files(flow, *report);
  put_signatures(flow, *report);

  const QString log = report->fingerprints.empty() ? QString() : text(report->fingerprints.front().sha256);
  return flow.finish({text(report->title), text(report->subject),
                      text(report->program) + QStringLiteral("   Log SHA-256 ") + log,
                      !report->draft.empty()});
}

}  // namespace soakwright::pdf
