// SPDX-License-Identifier: GPL-3.0-or-later
// The first page: what this is about, the verdict, job and record.
#include <QPainter>
#include <algorithm>

#include "app/pdf/page_facts.h"
#include "app/pdf/page_sections.h"
#include "app/pdf/sign.h"
#include "app/pdf/text_block.h"

namespace soakwright::pdf {
namespace {

void put_title(PageFlow& flow, const Report& report) {
  flow.skip(-flow.mm(6.0));  // the first page has no running head
  flow.paragraph(text(report.title), flow.scale().font(15.0, true), colour::kTitle);
  flow.skip(flow.mm(0.8));
  flow.paragraph(text(report.subject), flow.scale().font(10.0), colour::kInk);
  if (report.procedure) {
    QString line = QStringLiteral("Procedure");
    for (const LabelledText& fact : report.procedure->facts) {
      if (fact.name == "Number") line += QLatin1Char(' ') + text(fact.text);
      if (fact.name == "Revision") line += QStringLiteral(", revision ") + text(fact.text);
    }
    flow.paragraph(line, flow.scale().font(8.5), colour::kFaintInk);
  }
  flow.skip(flow.mm(3.5));
}

void put_verdict(PageFlow& flow, const Report& report) {
  const double pad = flow.mm(3.0);
  const double sign_column = report.verdict ? flow.mm(14.0) : 0.0;
  const double width = flow.width() - 2.0 * pad - sign_column;
  const QString word =
      report.verdict ? text(report.verdict_text) : QStringLiteral("Record only, not evaluated");
  const TextBlock verdict(word, flow.scale().font(17.0, true), width);
  const std::string said =
      report.verdict_sentence + (report.draft.empty() ? std::string{} : " " + report.draft);
  const TextBlock sentence(text(said), flow.scale().font(9.0), width);
  const QString caution = report.cautions.empty() ? QString() : text(report.cautions.front());
  const TextBlock below(caution, flow.scale().font(7.5), width);
  const double height = verdict.height() + sentence.height() + below.height() + 2.0 * pad;
  flow.need(height);
  const QRectF box(flow.left(), flow.y(), flow.width(), height);
  const double frame = flow.mm(0.6);
  const double radius = flow.mm(4.2);
  const auto sign = report.verdict ? std::optional{sign_of(*report.verdict)} : std::nullopt;
  flow.draw([=](QPainter& painter) {
    const QColor ink = sign ? colour_of(*sign) : colour::kTitle;
    painter.setPen(QPen(ink, frame));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(box.adjusted(0.5 * frame, 0.5 * frame, -0.5 * frame, -0.5 * frame));
    QPointF at = box.topLeft() + QPointF(pad + sign_column, pad);
    if (sign) draw_sign(painter, {box.left() + pad + 0.42 * sign_column, box.center().y()}, radius, *sign);
    painter.setPen(ink);
    verdict.draw(painter, at);
    at.ry() += verdict.height();
    painter.setPen(colour::kInk);
    sentence.draw(painter, at);
    at.ry() += sentence.height();
    painter.setPen(colour::kFaintInk);
    below.draw(painter, at);
  });
  flow.skip(height + flow.mm(4.0));
}

}  // namespace

void put_front(PageFlow& flow, const Report& report) {
  put_title(flow, report);
  put_verdict(flow, report);
  std::vector<LabelColumn> columns;
  if (!report.job.empty()) columns.push_back({QStringLiteral("Job"), report.job});
  columns.push_back({QStringLiteral("Record"), report.record});
  put_fact_columns(flow, columns, 26.0);
}

}  // namespace soakwright::pdf
