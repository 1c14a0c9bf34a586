// SPDX-License-Identifier: GPL-3.0-or-later
// The chart of the whole run, a lying page by itself; of several welds each has its own.
#include <QPainter>

#include "app/pdf/chart/chart_of_weld.h"
#include "app/pdf/chart/chart_painter.h"
#include "app/pdf/pages/page_sections.h"

namespace soakwright::pdf {

void put_charts(PageFlow& flow, const std::shared_ptr<const Report>& report) {
  if (report->chart.traces.empty()) return;
  const auto insert = [&](const std::string& weld, const QString& said) {
    const auto chart = std::make_shared<const Chart>(chart_of_weld(*report, weld));
    flow.insert_lying_page([chart, said, scale = flow.scale()](QPainter& painter, const QRectF& area) {
      paint_chart_sheet(painter, area, scale, *chart, said);
    });
  };
  if (report->welds.size() < 2) {
    const QString verdict = report->verdict ? text(report->verdict_text) + QStringLiteral(". ") : QString();
    insert({}, verdict + text(report->verdict_sentence));
    return;
  }
  for (const WeldRow& weld : report->welds) insert(weld.number, text(weld.verdict_text) + QLatin1Char('.'));
}

}  // namespace soakwright::pdf
