// SPDX-License-Identifier: GPL-3.0-or-later
// The findings, by event: what happened, on which limits, what a person decided, and a small chart of it.
#include <QPainter>
#include <algorithm>

#include "app/pdf/chart/detail_chart.h"
#include "app/pdf/pages/page_sections.h"
#include "app/pdf/pages/sign.h"
#include "app/pdf/text_block.h"

namespace soakwright::pdf {
namespace {

constexpr std::size_t kMostCharts = 24;
constexpr double kChart_mm = 46.0;
constexpr double kTextShare = 0.52;

bool can_be_drawn(const Evidence& evidence) {
  return (evidence.at_s || (evidence.from_s && evidence.to_s)) &&
         (!evidence.traces.empty() || !evidence.points.empty() || evidence.from_s);
}

/// One paragraph of an event's text.
struct Piece {
  TextBlock block;
  QColor ink;
  double space_above = 0.0;
};

QString joined(const std::vector<std::string>& parts, const QString& between) {
  QStringList list;
  for (const std::string& part : parts) list << bound_text(part);
  return list.join(between);
}

QString title_of(const EventRow& event) {
  constexpr std::size_t kNamed = 3;
  QString title = text(event.tag) + QStringLiteral("   ") + text(event.kind_text);
  std::vector<std::string> names;
  for (const std::string& name : event.requirements)
    if (!name.empty()) names.push_back(name);
  const std::size_t more = names.size() - std::min(names.size(), kNamed);
  names.resize(names.size() - more);
  if (!names.empty()) title += QStringLiteral(": ") + joined(names, QStringLiteral("; "));
  if (more > 0) title += QStringLiteral("; and %1 more").arg(more);
  return title;
}

std::vector<Piece> pieces_of(const PageFlow& flow, const EventRow& event, double width, double title_indent) {
  std::vector<Piece> pieces;
  const QFont body = flow.scale().font(kBodyPoints);
  const auto add = [&](const QString& words, const QFont& font, const QColor& ink, double space_mm) {
    if (!words.isEmpty()) pieces.push_back({TextBlock(words, font, width), ink, flow.mm(space_mm)});
  };
  pieces.push_back({TextBlock(title_of(event), flow.scale().font(8.5, true), width - title_indent),
                    colour_of(sign_of(event.kind)), 0.0});
  QStringList where;
  if (!event.when.empty()) where << bound_text(event.when);
  if (!event.where.empty()) where << text(event.where);
  if (!event.worst.empty()) where << QStringLiteral("worst value ") + bound_text(event.worst);
  add(where.join(QStringLiteral(";  ")), body, colour::kFaintInk, 0.4);
  for (const std::string& words : event.texts) add(bound_sentence(words), body, colour::kInk, 0.5);
  for (const std::string& words : event.remarks)
    add(QStringLiteral("Remark by hand, ") + bound_sentence(words), body, colour::kInk, 0.5);
  std::vector<std::string> ids;
  for (const std::string& id : event.ids)
    if (!id.empty() && std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
  add(joined(ids, QStringLiteral(", ")), body, colour::kFaintInk, 0.5);
  if (!event.dispositions.empty())
    add(QStringLiteral("Disposition: ") + joined(event.dispositions, QStringLiteral("; ")),
        flow.scale().font(kBodyPoints, true), colour::kInk, 0.8);
  if (event.open)
    add(QStringLiteral("Disposition: open"), flow.scale().font(kBodyPoints, true), colour::kNotMet, 0.8);
  return pieces;
}

double height_of(const std::vector<Piece>& pieces) {
  double height = 0.0;
  for (const Piece& piece : pieces) height += piece.space_above + piece.block.height();
  return height;
}

/// Broken over pages between paragraphs, and within one that is longer than a page.
void put_long(PageFlow& flow, const EventRow& event, const std::vector<Piece>& pieces, double indent) {
  const Sign sign = sign_of(event.kind);
  bool first = true;
  for (const Piece& piece : pieces) {
    flow.skip(piece.space_above);
    for (int from = 0; from < piece.block.lines();) {
      flow.need(std::min(2, piece.block.lines() - from) * piece.block.line_height());
      const int fits = std::max(1, static_cast<int>(flow.room() / piece.block.line_height()));
      const int to = std::min(piece.block.lines(), from + fits);
      const QPointF at(flow.left() + (first ? indent : 0.0), flow.y());
      const double sign_at = flow.left() + flow.mm(1.4);
      const double radius = flow.mm(1.3);
      flow.draw([=, block = piece.block, ink = piece.ink, marked = first && from == 0](QPainter& painter) {
        if (marked) draw_sign(painter, {sign_at, at.y() + 0.5 * block.line_height()}, radius, sign);
        painter.setPen(ink);
        block.draw(painter, at, from, to);
      });
      flow.skip((to - from) * piece.block.line_height());
      from = to;
      if (from < piece.block.lines()) flow.new_page();
    }
    first = false;
  }
}

void put_event(PageFlow& flow, const std::shared_ptr<const Report>& report, std::size_t index,
               bool with_chart) {
  const EventRow& event = report->events[index];
  const double indent = flow.mm(4.2);
  const double text_width = with_chart ? kTextShare * flow.width() : flow.width();
  const std::vector<Piece> pieces = pieces_of(flow, event, text_width, indent);
  const double chart = with_chart ? flow.stretched_mm(kChart_mm) : 0.0;
  const double height = std::max(height_of(pieces), chart);
  const double rule = flow.mm(1.2);
  if (height + rule > flow.full_height() - flow.mm(16.0)) {
    put_long(flow, event, pieces_of(flow, event, flow.width(), indent), indent);
  } else {
    flow.need(height + rule);
    if (with_chart) {
      const double left = flow.left() + text_width + flow.mm(3.0);
      const QRectF area(left, flow.y(), flow.left() + flow.width() - left, chart - flow.mm(1.0));
      flow.draw([report, area, index, scale = flow.scale()](QPainter& painter) {
        paint_evidence(painter, area, scale, report->chart, *report->events[index].evidence);
      });
    }
    const double y = flow.y();
    put_long(flow, event, pieces, indent);
    flow.skip(y + height - flow.y());
  }
  flow.skip(rule);
  const double hair = flow.mm(0.12);
  flow.draw([=, x = flow.left(), right = flow.left() + flow.width(), at = flow.y()](QPainter& painter) {
    painter.setPen(QPen(colour::kRule, hair));
    painter.drawLine(QPointF(x, at), QPointF(right, at));
  });
  flow.skip(rule);
}

}  // namespace

void put_events(PageFlow& flow, const std::shared_ptr<const Report>& report) {
  if (!report->verdict) return;
  flow.heading(QStringLiteral("Findings"), flow.mm(14.0));
  const QFont body = flow.scale().font(kBodyPoints);
  if (report->events.empty()) {
    flow.paragraph(QStringLiteral("None."), body, colour::kInk);
    return;
  }
  std::size_t drawable = 0;
  for (const EventRow& event : report->events)
    if (event.evidence && can_be_drawn(*event.evidence)) ++drawable;
  QString note = QStringLiteral(
      "One entry for each event, numbered as on the chart. On the small charts: shaded, the time of the "
      "event; "
      "thick line, the fitted rate; rings, the readings that count; green lines, the edges of the holding "
      "temperature range.");
  if (drawable > kMostCharts)
    note += QStringLiteral(" Charts are drawn of the first %1 of %2 events.").arg(kMostCharts).arg(drawable);
  flow.paragraph(note, body, colour::kFaintInk);
  flow.skip(flow.mm(1.5));
  std::size_t drawn = 0;
  for (std::size_t i = 0; i < report->events.size(); ++i) {
    const auto& evidence = report->events[i].evidence;
    const bool with_chart = evidence && can_be_drawn(*evidence) && drawn < kMostCharts;
    drawn += with_chart ? 1 : 0;
    put_event(flow, report, i, with_chart);
  }
}

}  // namespace soakwright::pdf
