// SPDX-License-Identifier: GPL-3.0-or-later
// The mouse over the chart: wheel, drags, clicks, and what the pointer is at.

#include <QMouseEvent>
#include <QRubberBand>
#include <QToolTip>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "app/gui/chart/chart_layers.h"
#include "app/gui/chart/chart_pane.h"
#include "app/gui/chart/chart_steps.h"
#include "app/gui/parts/plain_tip.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr double kClickSlack = 4.0;  ///< pixels; farther is a drag
constexpr double kNearTrace = 8.0;

}  // namespace

bool ChartPane::eventFilter(QObject* watched, QEvent* event) {
  if (watched != plot_ || !scene_.chart()) return QWidget::eventFilter(watched, event);
  switch (event->type()) {
    case QEvent::Wheel: {
      const auto* turned = static_cast<QWheelEvent*>(event);
      wheel(turned->position(), turned->angleDelta(), turned->modifiers());
      event->accept();
      return true;
    }
    case QEvent::MouseButtonPress: {
      const auto* mouse = static_cast<QMouseEvent*>(event);
      setFocus(Qt::MouseFocusReason);
      press(mouse->position(), mouse->button(), mouse->modifiers());
      return true;
    }
    case QEvent::MouseMove:
      drag(static_cast<QMouseEvent*>(event)->position());
      return true;
    case QEvent::MouseButtonRelease:
      release(static_cast<QMouseEvent*>(event)->position());
      return true;
    case QEvent::MouseButtonDblClick:
      resetView();
      return true;
    case QEvent::Leave:
      setPointer(std::nullopt);
      return false;
    default:
      return QWidget::eventFilter(watched, event);
  }
}

void ChartPane::wheel(const QPointF& position, QPoint turn, Qt::KeyboardModifiers modifiers) {
  const double notches = (turn.y() != 0 ? turn.y() : turn.x()) / 120.0;
  if (modifiers.testFlag(Qt::ShiftModifier)) return panTime(-kPanShare * notches);
  const double factor = std::pow(kStep, notches);
  if (modifiers.testFlag(Qt::ControlModifier)) {
    const PixelMap map(*traces_rect_);
    const double centre = map.low_c + (map.bottom - position.y()) / map.pixels_per_c;
    Ranges next = ranges();
    if ((next.high_c - next.low_c) / factor < kSmallestSpan_k) return;
    next.low_c = centre - (centre - next.low_c) / factor;
    next.high_c = centre + (next.high_c - centre) / factor;
    return setRanges(next);
  }
  const PixelMap map(*traces_rect_);
  setPointer(map.from_s + (position.x() - map.left) / map.pixels_per_s);
  zoomTime(factor);
}

void ChartPane::press(const QPointF& position, Qt::MouseButton button, Qt::KeyboardModifiers modifiers) {
  pressed_at_ = position;
  pressed_button_ = button;
  pressed_ranges_ = ranges();
  if (button == Qt::BackButton) return previousView();
  if (button == Qt::ForwardButton) return nextView();
  const bool framing = button == Qt::RightButton || modifiers.testFlag(Qt::ShiftModifier);
  drag_ = framing ? Drag::frame : modifiers.testFlag(Qt::ControlModifier) ? Drag::time : Drag::pan;
  if (const auto near = cursorNear(position); near && drag_ == Drag::pan) {
    drag_ = Drag::cursor;
    dragged_cursor_ = *near;
  }
  if (const auto near = limitNear(position); near && drag_ == Drag::pan && button == Qt::LeftButton) {
    drag_ = Drag::limit;
    pressed_limit_ = *near;
  }
}

void ChartPane::drag(const QPointF& position) {
  const PixelMap map(*traces_rect_);
  const QPointF moved = position - pressed_at_;
  if (drag_ == Drag::pan && moved.manhattanLength() > kClickSlack) {
    Ranges next = pressed_ranges_;
    next.from_s -= moved.x() / map.pixels_per_s;
    next.to_s -= moved.x() / map.pixels_per_s;
    next.low_c += moved.y() / map.pixels_per_c;
    next.high_c += moved.y() / map.pixels_per_c;
    const Ranges whole = wholeRecord();
    keep_within(next.from_s, next.to_s, whole.from_s, whole.to_s);
    return setRanges(next);
  }
  if (drag_ == Drag::limit) return dragLimit(position);
  if (drag_ == Drag::cursor) return setCursor(dragged_cursor_, timeAt(position.x()));
  if (drag_ == Drag::time) {
    const QRectF strip(QPointF(pressed_at_.x(), map.rect.top()), QPointF(position.x(), map.rect.bottom()));
    frame_->setGeometry(strip.normalized().intersected(QRectF(map.rect)).toRect());
    frame_->setVisible(std::abs(moved.x()) > kClickSlack);
    return;
  }
  if (drag_ == Drag::frame) {
    frame_->setGeometry(QRectF(pressed_at_, position).normalized().intersected(QRectF(map.rect)).toRect());
    frame_->setVisible(moved.manhattanLength() > kClickSlack);
    return;
  }
  QString said = lanes_->textAt(position);
  const auto over_limit = cursorNear(position) ? std::nullopt : limitNear(position);
  if (over_limit)
    said = tr("%1. Drag to change it in the procedure, or type it there (Ctrl+4).")
               .arg(limit_words(*over_limit, over_limit->level_c));
  const auto over_trace =
      said.isEmpty() && map.rect.contains(position.toPoint()) ? traceNear(position) : std::nullopt;
  if (over_trace) said = pdf::shown_text(scene_.chart()->traces[*over_trace].legend);
  plot_->setCursor(cursorNear(position) ? Qt::SplitHCursor
                   : over_limit         ? Qt::SizeVerCursor
                                        : Qt::ArrowCursor);
  plot_->setToolTip(plain_tip(said));
  const bool over = position.x() >= map.rect.left() && position.x() <= map.rect.right();
  setPointer(over ? std::optional(map.from_s + (position.x() - map.left) / map.pixels_per_s) : std::nullopt);
}

void ChartPane::release(const QPointF& position) {
  const Drag was = drag_;
  drag_ = Drag::none;
  frame_->hide();
  if (was == Drag::none || was == Drag::cursor) return;
  if (was == Drag::limit) return releaseLimit(position);
  if ((position - pressed_at_).manhattanLength() <= kClickSlack) {
    // Shift sets B and Ctrl sets A; without them a click chooses.
    if (was == Drag::time) return setCursor('A', timeAt(position.x()));
    const PixelMap map(*traces_rect_);
    if (pressed_button_ == Qt::RightButton && position.x() >= map.rect.left() &&
        position.x() <= map.rect.right())
      return emit menuWanted(timeAt(position.x()), traceNear(position),
                             plot_->mapToGlobal(position.toPoint()));
    if (was == Drag::frame && pressed_button_ == Qt::LeftButton) return setCursor('B', timeAt(position.x()));
    return click(position);
  }
  if (was == Drag::time) {
    const auto trace = emphasised() ? emphasised() : traceNear(pressed_at_);
    const double a = timeAt(pressed_at_.x());
    const double b = timeAt(position.x());
    return emit timeDrawn(std::min(a, b), std::max(a, b), trace, plot_->mapToGlobal(position.toPoint()));
  }
  if (was != Drag::frame) return;
  const PixelMap map(*traces_rect_);
  const QRectF box = QRectF(pressed_at_, position).normalized().intersected(QRectF(map.rect));
  if (box.width() < kClickSlack || box.height() < kClickSlack) return;
  setRanges({map.from_s + (box.left() - map.left) / map.pixels_per_s,
             map.from_s + (box.right() - map.left) / map.pixels_per_s,
             map.low_c + (map.bottom - box.bottom()) / map.pixels_per_c,
             map.low_c + (map.bottom - box.top()) / map.pixels_per_c});
}

void ChartPane::click(const QPointF& position) {
  if (const auto found = lanes_->hit(position)) {
    switch (found->kind) {
      case LaneLayer::Hit::Kind::phase:
        return emit phaseClicked(found->index);
      case LaneLayer::Hit::Kind::stage:
        return emit stageClicked(found->index);
      case LaneLayer::Hit::Kind::finding:
        return emit findingClicked(scene_.chart()->marks[found->index].finding);
    }
  }
  if (traces_rect_->rect().contains(position.toPoint())) emit traceClicked(traceNear(position));
}

std::optional<std::size_t> ChartPane::traceNear(const QPointF& position) const {
  const Chart& chart = *scene_.chart();
  const PixelMap map(*traces_rect_);
  const double at_s = map.from_s + (position.x() - map.left) / map.pixels_per_s;
  const std::vector<double>& times = chart.record->times_s;
  const auto at = std::lower_bound(times.begin(), times.end(), at_s) - times.begin();
  const auto row = static_cast<std::size_t>(
      std::clamp<std::ptrdiff_t>(at, 0, static_cast<std::ptrdiff_t>(times.size()) - 1));
  std::optional<std::size_t> nearest;
  double distance = kNearTrace;
  for (std::size_t i = 0; i < chart.traces.size(); ++i) {
    if (!scene_.shows(i)) continue;
    const auto celsius = chart.traces[i].readings.celsius(row);
    if (!celsius) continue;
    const double away = std::abs(map.y(*celsius) - position.y());
    if (away < distance) {
      distance = away;
      nearest = i;
    }
  }
  return nearest;
}

}  // namespace soakwright::gui
