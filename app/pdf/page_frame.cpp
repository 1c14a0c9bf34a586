// SPDX-License-Identifier: GPL-3.0-or-later
// What stands on every page: its head, its foot with page x of y, and the stamp of a draft.
#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <cmath>
#include <numbers>

#include "app/pdf/page_flow.h"

namespace soakwright::pdf {
namespace {

constexpr double kFramePoints = 7.5;
constexpr double kStampPoints = 150.0;
constexpr double kDraftPoints = 11.0;

}  // namespace

void PageFlow::frame_page(std::size_t index, std::size_t count, const Frame& frame) {
  Page& page = pages_[index];
  const QFont font = scale_.font(kFramePoints);
  const QFontMetricsF metrics(font);
  const double x = mm(kSideMargin);
  const double right = page_width(page) - x;
  const double foot = page_height(page) - mm(kBottomMargin) + mm(4.0);
  const double head = mm(kTopMargin) - mm(5.0);
  const double hair = mm(0.15);
  const double line = metrics.height();
  const QString number = QStringLiteral("Page %1 of %2").arg(index + 1).arg(count);
  const double half = 0.45 * (right - x);
  const QString left_head = metrics.elidedText(frame.head_left, Qt::ElideRight, half);
  const QString right_head = metrics.elidedText(frame.head_right, Qt::ElideRight, half);
  const QString left_foot = metrics.elidedText(frame.foot_left, Qt::ElideMiddle,
                                               right - x - metrics.horizontalAdvance(number) - mm(6.0));
  const bool first = index == 0;
  const auto put_head = [=](QPainter& painter) {
    if (first) return;  // the title stands on the first page in full
    painter.setFont(font);
    painter.setPen(QPen(colour::kRule, hair));
    painter.drawLine(QPointF(x, head), QPointF(right, head));
    painter.setPen(colour::kFaintInk);
    const QRectF box(x, head - 1.4 * line, right - x, line);
    painter.drawText(box, Qt::AlignLeft | Qt::AlignTop | Qt::TextDontClip, left_head);
    painter.drawText(box, Qt::AlignRight | Qt::AlignTop | Qt::TextDontClip, right_head);
  };
  const auto put_foot = [=](QPainter& painter) {
    painter.setFont(font);
    painter.setPen(QPen(colour::kRule, hair));
    painter.drawLine(QPointF(x, foot), QPointF(right, foot));
    painter.setPen(colour::kFaintInk);
    const QRectF box(x, foot + 0.5 * line, right - x, line);
    painter.drawText(box, Qt::AlignLeft | Qt::AlignTop | Qt::TextDontClip, left_foot);
    painter.drawText(box, Qt::AlignRight | Qt::AlignTop | Qt::TextDontClip, number);
  };
  page.items.insert(page.items.begin(), put_head);
  page.items.push_back(put_foot);
}

/// Behind everything else, in an opaque pale colour; the letters across the page are outlines, so that a
/// reader of the text meets the word once, at the page's head.
void PageFlow::stamp_as_draft(Page& page) const {
  const QString word = QStringLiteral("DRAFT");
  const double width = page_width(page);
  const double height = page_height(page);
  QPainterPath outline;
  outline.addText(QPointF(), scale_.font(kStampPoints, true), word);
  const QRectF box = outline.boundingRect();
  const double angle = -std::atan2(height, width) * 180.0 / std::numbers::pi;
  const QFont font = scale_.font(kDraftPoints, true);
  const QRectF head(mm(kSideMargin), mm(kTopMargin) - mm(14.0), width - mm(2.0 * kSideMargin), mm(6.0));
  page.items.insert(page.items.begin(), [=](QPainter& painter) {
    painter.save();
    painter.translate(0.5 * width, 0.5 * height);
    painter.rotate(angle);
    painter.translate(-box.center());
    painter.fillPath(outline, colour::kStamp);
    painter.restore();
    painter.setFont(font);
    painter.setPen(colour::kNotMet);
    painter.drawText(head, Qt::AlignHCenter | Qt::AlignVCenter | Qt::TextDontClip, word);
  });
}

}  // namespace soakwright::pdf
