// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/time_overview.h"

#include <QMouseEvent>
#include <QPainter>
#include <QTimer>
#include <algorithm>
#include <cmath>

namespace soakwright::gui {
namespace {

constexpr int kHeight = 22;
constexpr int kColumnWidth = 2;
constexpr double kNearEnd = 5.0;        ///< pixels
constexpr double kLeastFrame = 4.0;     ///< pixels: a narrower frame could not be seen
constexpr double kLeastShare = 1.0e-5;  ///< of the whole that can be shown
constexpr double kUnshownShare = 0.25;  ///< of the ink over what is not in the frame

}  // namespace

TimeOverview::TimeOverview(Extremes extremes, QWidget* parent)
    : QWidget(parent), extremes_(std::move(extremes)), colours_(ChartColours::of(palette())) {
  setFixedHeight(kHeight);
  setMouseTracking(true);
  setAccessibleName(tr("Overview of the record"));
  setToolTip(tr("The whole record. Drag the frame, or one of its ends, to show another time."));
}

void TimeOverview::setColours(const ChartColours& colours) {
  colours_ = colours;
  update();
}

void TimeOverview::setWhole(const TimeSpan& whole) {
  whole_ = whole;
  stale_ = true;
  update();
}

void TimeOverview::setShown(const TimeSpan& shown) {
  if (shown_ == shown) return;
  shown_ = shown;
  update();
}

void TimeOverview::setEnds(int left, int right) {
  if (left_ == left && right_ == right) return;
  left_ = left;
  right_ = right;
  stale_ = true;
  update();
}

double TimeOverview::x(double at_s) const {
  return left_ + (at_s - whole_.from_s) / (whole_.to_s - whole_.from_s) * (right_ - left_);
}

double TimeOverview::timeAt(double x) const {
  return whole_.from_s + (x - left_) / std::max(1, right_ - left_) * (whole_.to_s - whole_.from_s);
}

void TimeOverview::workOut() {
  columns_.clear();
  for (int x = left_; x < right_; x += kColumnWidth)
    columns_.push_back(extremes_(timeAt(x), timeAt(x + kColumnWidth)));
  stale_ = false;
}

void TimeOverview::paintEvent(QPaintEvent* /*event*/) {
  if (stale_ && !waiting_) {
    // The chart itself comes first.
    waiting_ = true;
    QTimer::singleShot(0, this, [this] {
      waiting_ = false;
      workOut();
      update();
    });
  }
  QPainter painter(this);
  painter.fillRect(rect(), colours_.background);
  if (right_ <= left_ || whole_.to_s <= whole_.from_s) return;
  std::optional<std::pair<double, double>> range;
  for (const auto& column : columns_)
    if (column)
      range = range
                  ? std::pair{std::min(range->first, column->first), std::max(range->second, column->second)}
                  : *column;
  const double shown_from = x(shown_.from_s);
  const double shown_to = std::max(x(shown_.to_s), shown_from + kLeastFrame);
  const QColor unshown = mixed(colours_.ink, colours_.background, kUnshownShare);
  if (range && !stale_) {
    const double per_c = (height() - 5.0) / std::max(1.0, range->second - range->first);
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      if (!columns_[i]) continue;
      const double at = left_ + kColumnWidth * static_cast<double>(i);
      const double top = height() - 3.0 - (columns_[i]->second - range->first) * per_c;
      const double low = height() - 2.0 - (columns_[i]->first - range->first) * per_c;
      const bool shown = at + kColumnWidth > shown_from && at < shown_to;
      painter.fillRect(QRectF(at, top, kColumnWidth, std::max(1.0, low - top)),
                       shown ? colours_.ink : unshown);
    }
  }
  painter.setPen(QPen(palette().color(QPalette::Highlight), 1.6));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(QRectF(QPointF(std::max(shown_from, left_ + 0.5), 1.0),
                          QPointF(std::min(shown_to, right_ - 0.5), height() - 1.5)));
}

TimeOverview::Grip TimeOverview::gripAt(double x) const {
  const double from = this->x(shown_.from_s);
  const double to = this->x(shown_.to_s);
  // A narrow frame is dragged as a whole: its ends would leave nothing to take hold of.
  const double near = std::min(kNearEnd, 0.25 * (to - from));
  if (std::abs(x - from) <= near) return Grip::first_end;
  if (std::abs(x - to) <= near) return Grip::last_end;
  return x > from && x < to ? Grip::frame : Grip::none;
}

/// Moved back into the whole, no wider than that.
TimeSpan TimeOverview::within(TimeSpan span) const {
  const double size = std::min(span.to_s - span.from_s, whole_.to_s - whole_.from_s);
  span.from_s = std::clamp(span.from_s, whole_.from_s, whole_.to_s - size);
  return {span.from_s, span.from_s + size};
}

void TimeOverview::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || whole_.to_s <= whole_.from_s) return;
  const double at_s = timeAt(event->position().x());
  grip_ = gripAt(event->position().x());
  gripped_ = shown_;
  gripped_s_ = at_s;
  if (grip_ != Grip::none) return;
  // Beside the frame: it comes to the pointer, and can be dragged on from there.
  const double half = 0.5 * (shown_.to_s - shown_.from_s);
  gripped_ = within({at_s - half, at_s + half});
  grip_ = Grip::frame;
  emit wanted(gripped_);
}

void TimeOverview::mouseMoveEvent(QMouseEvent* event) {
  const double x = event->position().x();
  if (grip_ == Grip::none) {
    const Grip near = gripAt(x);
    setCursor(near == Grip::frame  ? Qt::OpenHandCursor
              : near == Grip::none ? Qt::ArrowCursor
                                   : Qt::SizeHorCursor);
    return;
  }
  const double moved_s = timeAt(x) - gripped_s_;
  const double least_s = kLeastShare * (whole_.to_s - whole_.from_s);
  TimeSpan next = gripped_;
  if (grip_ == Grip::frame) {
    next = within({gripped_.from_s + moved_s, gripped_.to_s + moved_s});
  } else if (grip_ == Grip::first_end) {
    next.from_s = std::clamp(gripped_.from_s + moved_s, whole_.from_s, gripped_.to_s - least_s);
  } else {
    next.to_s = std::clamp(gripped_.to_s + moved_s, gripped_.from_s + least_s, whole_.to_s);
  }
  emit wanted(next);
}

void TimeOverview::mouseReleaseEvent(QMouseEvent* /*event*/) { grip_ = Grip::none; }

void TimeOverview::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  stale_ = true;
}

}  // namespace soakwright::gui
