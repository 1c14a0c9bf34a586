// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/page_flow.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "app/pdf/text_block.h"

namespace soakwright::pdf {
namespace {

constexpr double kHeadingPoints = 11.5;
constexpr double kSubheadingPoints = 9.0;
constexpr double kFramePoints = 7.0;
constexpr double kStampPoints = 150.0;
constexpr double kDraftPoints = 11.0;

}  // namespace

PageFlow::PageFlow(Scale scale) : scale_(scale), pages_(1), y_(mm(kTopMargin)) {}

void PageFlow::new_page(bool landscape) {
  pages_.push_back({landscape, {}});
  y_ = top();
}

void PageFlow::need(double height) {
  if (height > room() && !at_top()) new_page();
}

void PageFlow::heading(const QString& text, double follows) {
  if (!at_top()) skip(mm(5.0));
  const TextBlock block(text, scale_.font(kHeadingPoints, true), width());
  need(block.height() + mm(2.5) + follows);
  const double y = y_;
  const double x = left();
  const double right = left() + width();
  const double rule = y + block.height() + mm(0.6);
  const double thickness = mm(0.35);
  draw([=](QPainter& painter) {
    painter.setPen(colour::kTitle);
    block.draw(painter, {x, y});
    painter.setPen(QPen(colour::kTitle, thickness));
    painter.drawLine(QPointF(x, rule), QPointF(right, rule));
  });
  skip(block.height() + mm(2.5));
}

void PageFlow::subheading(const QString& text, double follows) {
  if (!at_top()) skip(mm(2.0));
  const TextBlock block(text, scale_.font(kSubheadingPoints, true), width());
  need(block.height() + mm(1.0) + follows);
  const QPointF at(left(), y_);
  draw([=](QPainter& painter) {
    painter.setPen(colour::kTitle);
    block.draw(painter, at);
  });
  skip(block.height() + mm(1.0));
}

void PageFlow::paragraph(const QString& text, const QFont& font, const QColor& ink, double indent) {
  if (text.isEmpty()) return;
  const TextBlock block(text, font, width() - indent);
  for (int first = 0; first < block.lines();) {
    // Two lines at least stay together at either end of a page.
    need(std::min(2, block.lines() - first) * block.line_height());
    const int fits = std::max(1, static_cast<int>(room() / block.line_height()));
    int last = std::min(block.lines(), first + fits);
    if (block.lines() - last == 1 && last - first > 2) --last;
    const QPointF at(left() + indent, y_);
    draw([=](QPainter& painter) {
      painter.setPen(ink);
      block.draw(painter, at, first, last);
    });
    skip((last - first) * block.line_height());
    first = last;
    if (first < block.lines()) new_page();
  }
}

/// Behind everything else, in an opaque pale colour; the letters across the page are outlines, so that a
/// reader of the text meets the word once, at the page's head.
void PageFlow::stamp_as_draft(Page& page, double page_width, double page_height) const {
  const QString word = QStringLiteral("DRAFT");
  QPainterPath outline;
  outline.addText(QPointF(), scale_.font(kStampPoints, true), word);
  const QRectF box = outline.boundingRect();
  const double angle = -std::atan2(page_height, page_width) * 180.0 / std::numbers::pi;
  page.items.insert(page.items.begin(), [=](QPainter& painter) {
    painter.translate(0.5 * page_width, 0.5 * page_height);
    painter.rotate(angle);
    painter.translate(-box.center());
    painter.fillPath(outline, colour::kStamp);
  });
  const QFont font = scale_.font(kDraftPoints, true);
  const QRectF head(mm(kSideMargin), mm(kTopMargin) - mm(14.0), page_width - mm(2.0 * kSideMargin), mm(6.0));
  page.items.insert(page.items.begin() + 1, [=](QPainter& painter) {
    painter.setFont(font);
    painter.setPen(colour::kNotMet);
    painter.drawText(head, Qt::AlignHCenter | Qt::AlignVCenter | Qt::TextDontClip, word);
  });
}

std::vector<Page> PageFlow::finish(const Frame& frame) {
  const QFont font = scale_.font(kFramePoints);
  const QFontMetricsF metrics(font);
  const auto count = pages_.size();
  for (std::size_t i = 0; i < count; ++i) {
    const double w = mm(pages_[i].landscape ? 297.0 : 210.0);
    const double h = mm(pages_[i].landscape ? 210.0 : 297.0);
    const double x = mm(kSideMargin);
    const double right = w - x;
    const double foot = h - mm(kBottomMargin) + mm(4.0);
    const double head = mm(kTopMargin) - mm(5.0);
    const double hair = mm(0.15);
    const double line = metrics.height();
    const QString number = QStringLiteral("Page %1 of %2").arg(i + 1).arg(count);
    const double half = 0.48 * (right - x);
    const QString left_head = metrics.elidedText(frame.head_left, Qt::ElideRight, half);
    const QString right_head = metrics.elidedText(frame.head_right, Qt::ElideRight, half);
    const QString left_foot = metrics.elidedText(frame.foot_left, Qt::ElideMiddle,
                                                 right - x - metrics.horizontalAdvance(number) - mm(6.0));
    const bool first = i == 0;
    pages_[i].items.push_back([=](QPainter& painter) {
      painter.setFont(font);
      painter.setPen(QPen(colour::kRule, hair));
      painter.drawLine(QPointF(x, foot), QPointF(right, foot));
      if (!first) painter.drawLine(QPointF(x, head), QPointF(right, head));
      painter.setPen(colour::kFaintInk);
      const QRectF foot_box(x, foot + 0.5 * line, right - x, line);
      painter.drawText(foot_box, Qt::AlignLeft | Qt::AlignTop | Qt::TextDontClip, left_foot);
      painter.drawText(foot_box, Qt::AlignRight | Qt::AlignTop | Qt::TextDontClip, number);
      if (first) return;  // the title stands on the first page in full
      const QRectF head_box(x, head - 1.4 * line, right - x, line);
      painter.drawText(head_box, Qt::AlignLeft | Qt::AlignTop | Qt::TextDontClip, left_head);
      painter.drawText(head_box, Qt::AlignRight | Qt::AlignTop | Qt::TextDontClip, right_head);
    });
    if (frame.draft) stamp_as_draft(pages_[i], w, h);
  }
  return std::move(pages_);
}

}  // namespace soakwright::pdf
