// SPDX-License-Identifier: GPL-3.0-or-later
// The chart on a page of its own, and small charts of what was measured where it is not met or inconclusive.
#include <QPainter>
#include <algorithm>

#include "app/pdf/chart_painter.h"
#include "app/pdf/detail_chart.h"
#include "app/pdf/page_sections.h"
#include "app/pdf/sign.h"
#include "app/pdf/text_block.h"

namespace soakwright::pdf {
namespace {

constexpr std::size_t kMostEvidence = 12;
constexpr double kEvidence_mm = 62.0;

bool can_be_drawn(const RequirementRow& row) {
  const Evidence& evidence = row.evidence;
  return row.verdict != Verdict::met && (evidence.at_s || (evidence.from_s && evidence.to_s)) &&
         (!evidence.traces.empty() || !evidence.points.empty() || evidence.from_s);
}

QString caption(const RequirementRow& row, bool several_welds) {
  QString words = text(row.stage) + QStringLiteral(", ");
  if (several_welds && !row.weld.empty()) words += text(row.weld) + QStringLiteral(", ");
  words += text(row.label).toLower() + QStringLiteral(": ") + bound_text(row.measured);
  if (!row.limit.empty()) words += QStringLiteral(" (") + bound_text(row.limit) + QStringLiteral(")");
  if (!row.where.empty()) words += QStringLiteral(", ") + text(row.where);
  return words;
}

}  // namespace

void put_chart(PageFlow& flow, const std::shared_ptr<const Report>& report) {
  if (report->chart.traces.empty()) return;
  flow.new_page(true);
  const QRectF area(flow.left(), flow.top() - flow.mm(2.0), flow.width(), flow.full_height() + flow.mm(2.0));
  flow.draw([report, area, scale = flow.scale()](QPainter& painter) {
    paint_chart_sheet(painter, area, scale, *report);
  });
  flow.new_page();
}

void put_evidence(PageFlow& flow, const std::shared_ptr<const Report>& report) {
  std::vector<std::size_t> shown;
  for (std::size_t i = 0; i < report->requirements.size() && shown.size() < kMostEvidence; ++i)
    if (can_be_drawn(report->requirements[i])) shown.push_back(i);
  if (shown.empty()) return;
  const double height = flow.mm(kEvidence_mm);
  flow.heading(QStringLiteral("What was measured where it is not met or inconclusive"), height);
  flow.paragraph(
      QStringLiteral("Shaded: the time that was measured. Thick line: the fitted rate. Rings: the readings "
                     "that count."),
      flow.scale().font(7.5), colour::kFaintInk);
  flow.skip(flow.mm(1.5));
  const double gap = flow.mm(4.0);
  const double width = 0.5 * (flow.width() - gap);
  for (std::size_t n = 0; n < shown.size(); ++n) {
    const bool left = n % 2 == 0;
    if (left) flow.need(height);
    const QRectF area(flow.left() + (left ? 0.0 : width + gap), flow.y(), width, height - flow.mm(3.0));
    const RequirementRow& row = report->requirements[shown[n]];
    const TextBlock words(caption(row, report->welds.size() > 1), flow.scale().font(7.0, true),
                          width - flow.mm(4.5));
    const Sign sign = sign_of(row.verdict);
    flow.draw([report, area, words, sign, which = shown[n], scale = flow.scale()](QPainter& painter) {
      draw_sign(painter, area.topLeft() + QPointF(scale.mm(1.6), scale.mm(1.6)), scale.mm(1.3), sign);
      painter.setPen(colour::kInk);
      words.draw(painter, area.topLeft() + QPointF(scale.mm(4.5), 0.0));
      paint_evidence(painter, area.adjusted(0.0, words.height() + scale.mm(0.5), 0.0, 0.0), scale,
                     report->chart, report->requirements[which].evidence);
    });
    if (!left || n + 1 == shown.size()) flow.skip(height);
  }
}

}  // namespace soakwright::pdf
