// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/report_pages.h"

#include <algorithm>

namespace soakwright::pdf {
namespace {

constexpr double kWellFilled = 0.62;
constexpr int kShortDigest = 16;

std::vector<Page> laid_out(const std::shared_ptr<const Report>& report, Scale scale, const IssueFacts& issue,
                           double stretch) {
  PageFlow flow(scale, report->paper, stretch);
  put_certificates(flow, report, issue);
  put_charts(flow, report);
  flow.new_page();
  put_requirements(flow, *report);
  put_events(flow, report);
  if (!report->verdict) {
    // Of a record that is only looked at, this is the answer.
    put_course(flow, *report);
    put_channels(flow, *report);
  }
  put_holds(flow, report);
  put_rates(flow, *report);
  put_heat(flow, *report);
  put_previous_records(flow, *report);
  put_budgets(flow, *report);
  put_explanations(flow, *report);
  if (report->verdict) {
    put_channels(flow, *report);
    put_procedure(flow, *report);
    put_course(flow, *report);
  }
  put_reading(flow, *report);
  put_file_warnings(flow, *report);
  put_methods(flow, *report);
  put_cautions(flow, *report);
  put_files(flow, *report);

  const QString log =
      report->fingerprints.empty() ? QString() : text(report->fingerprints.front().sha256).left(kShortDigest);
  return flow.finish({QStringLiteral("Heat treatment report ") + text(report->report_number),
                      text(report->subject),
                      text(report->program) + QStringLiteral("   Log SHA-256 ") + log + QStringLiteral("…"),
                      !report->draft.empty()});
}

double emptiest(const std::vector<Page>& pages) {
  return std::min_element(pages.begin(), pages.end(),
                          [](const Page& a, const Page& b) { return a.used < b.used; })
      ->used;
}

}  // namespace

std::vector<Page> report_pages(const std::shared_ptr<const Report>& report, Scale scale,
                               const IssueFacts& issue, const Watch& watch) {
  std::vector<Page> best;
  for (const double stretch : {1.0, 0.92, 1.1, 0.84, 1.2, 0.76, 1.3, 0.68, 1.4, 1.5}) {
    std::vector<Page> pages = laid_out(report, scale, issue, stretch);
    if (best.empty() || emptiest(pages) > emptiest(best)) best = std::move(pages);
    if (emptiest(best) >= kWellFilled || watch.stopped()) break;
  }
  return best;
}

}  // namespace soakwright::pdf
