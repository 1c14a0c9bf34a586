// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/page_flow.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>
#include <utility>

#include "app/pdf/text_block.h"

namespace soakwright::pdf {
namespace {

constexpr double kHeadingPoints = 11.5;
constexpr double kSubheadingPoints = 9.0;

}  // namespace

QSizeF sheet_mm(Paper paper) {
  // ISO 216; ANSI/ASME Y14.1 size A.
  return paper == Paper::letter ? QSizeF(215.9, 279.4) : QSizeF(210.0, 297.0);
}

PageFlow::PageFlow(Scale scale, Paper paper, double stretch)
    : scale_(scale), paper_(paper), stretch_(stretch), pages_(1), y_(mm(kTopMargin)) {}

double PageFlow::page_width(const Page& page) const {
  return mm(page.landscape ? sheet_mm(paper_).height() : sheet_mm(paper_).width());
}

double PageFlow::page_height(const Page& page) const {
  return mm(page.landscape ? sheet_mm(paper_).width() : sheet_mm(paper_).height());
}

void PageFlow::close_page() {
  pages_.back().used = std::clamp((y_ - top()) / full_height(), 0.0, 1.0);
  for (Page& page : inserted_) pages_.push_back(std::move(page));
  inserted_.clear();
}

void PageFlow::new_page() {
  std::vector<Title> titles;
  if (open_titles_ && open_titles_->end_y == y_ && open_titles_->from_y > top() + 0.5) {
    titles = std::move(open_titles_->titles);
    auto& items = pages_.back().items;
    items.erase(items.begin() + static_cast<std::ptrdiff_t>(open_titles_->items), items.end());
    y_ = open_titles_->from_y;
  }
  open_titles_.reset();
  close_page();
  pages_.push_back({});
  y_ = top();
  for (const Title& title : titles) put_title(title, 0.0);
}

void PageFlow::need(double height) {
  if (height > room() && !at_top()) new_page();
}

void PageFlow::keep_together(double most, const std::function<void(PageFlow&)>& put) {
  PageFlow trial(scale_, paper_, stretch_);
  put(trial);
  if (trial.pages_.size() == 1 && trial.y_ - trial.top() <= most * full_height())
    need(trial.y_ - trial.top() + mm(3.0));
  put(*this);
}

void PageFlow::insert_lying_page(std::function<void(QPainter&, const QRectF&)> paint) {
  Page page{true, {}, 1.0};
  const QRectF area(mm(kSideMargin), mm(kTopMargin - 2.0), page_width(page) - mm(2.0 * kSideMargin),
                    page_height(page) - mm(kTopMargin - 2.0 + kBottomMargin));
  page.items.push_back([paint = std::move(paint), area](QPainter& painter) { paint(painter, area); });
  inserted_.push_back(std::move(page));
}

void PageFlow::heading(const QString& text, double follows) { put_title({text, true}, follows); }

void PageFlow::subheading(const QString& text, double follows) { put_title({text, false}, follows); }

void PageFlow::put_title(const Title& title, double follows) {
  const bool continued = open_titles_ && open_titles_->end_y == y_;
  if (!continued) open_titles_ = OpenTitles{{}, pages_.back().items.size(), y_, y_};
  const double before = at_top() ? 0.0 : stretched_mm(title.main ? 5.0 : 2.0);
  const double after = mm(title.main ? 2.5 : 1.0);
  const TextBlock block(title.text, scale_.font(title.main ? kHeadingPoints : kSubheadingPoints, true),
                        width());
  if (before + block.height() + after + follows > room() && !at_top()) {
    new_page();  // takes titles above this one along
    const double most = room() - block.height() - after - mm(5.0);
    return put_title(title, std::clamp(follows, 0.0, std::max(0.0, most)));
  }
  skip(before);
  const QPointF at(left(), y_);
  const double rule = y_ + block.height() + mm(0.6);
  const double right = left() + width();
  const double thickness = mm(0.35);
  draw([=, main = title.main](QPainter& painter) {
    painter.setPen(colour::kTitle);
    block.draw(painter, at);
    if (!main) return;
    painter.setPen(QPen(colour::kTitle, thickness));
    painter.drawLine(QPointF(at.x(), rule), QPointF(right, rule));
  });
  skip(block.height() + after);
  if (!open_titles_) open_titles_ = OpenTitles{{}, 0, top(), y_};
  open_titles_->titles.push_back(title);
  open_titles_->end_y = y_;
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

std::vector<Page> PageFlow::finish(const Frame& frame) {
  close_page();
  const std::size_t count = pages_.size();
  for (std::size_t i = 0; i < count; ++i) {
    frame_page(i, count, frame);
    if (frame.draft) stamp_as_draft(pages_[i]);
  }
  return std::move(pages_);
}

}  // namespace soakwright::pdf
