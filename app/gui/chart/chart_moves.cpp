// SPDX-License-Identifier: GPL-3.0-or-later
// Moving over the chart: zoom, pan, frame, the reading line, and what was clicked.

#include <QKeyEvent>
#include <QMouseEvent>
#include <QRubberBand>
#include <QToolTip>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "app/gui/chart/chart_layers.h"
#include "app/gui/chart/chart_pane.h"
#include "app/gui/parts/plain_tip.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr double kStep = 1.25;      ///< one notch of the wheel, one key
constexpr double kPanShare = 0.15;  ///< of what is in view, one key
constexpr double kSmallestSpan_k = 0.5;
constexpr double kClickSlack = 4.0;  ///< pixels; farther is a drag
constexpr double kNearTrace = 8.0;

/// Keeps a range within the whole, shrinking it only where it is wider.
void keep_within(double& lower, double& upper, double least, double most) {
  const double size = std::min(upper - lower, most - least);
  lower = std::clamp(lower, least, most - size);
  upper = lower + size;
}

}  // namespace

void ChartPane::zoomTime(double factor) {
  const Ranges now = ranges();
  const double centre = scene_.pointer_s && *scene_.pointer_s > now.from_s && *scene_.pointer_s < now.to_s
                            ? *scene_.pointer_s
                            : 0.5 * (now.from_s + now.to_s);
  if (!scene_.chart()) return;
  Ranges next = now;
  const double least = std::max(2.0 * scene_.chart()->record->interval_s, 1e-3);
  const double size = std::max((now.to_s - now.from_s) / factor, least);
  const double share = (centre - now.from_s) / (now.to_s - now.from_s);
  next.from_s = centre - share * size;
  next.to_s = next.from_s + size;
  const Ranges whole = wholeRecord();
  keep_within(next.from_s, next.to_s, whole.from_s, whole.to_s);
  setRanges(next);
}

void ChartPane::zoomTemperature(double factor) {
  Ranges next = ranges();
  const double centre = 0.5 * (next.low_c + next.high_c);
  const double half = std::max(0.5 * (next.high_c - next.low_c) / factor, 0.5 * kSmallestSpan_k);
  next.low_c = centre - half;
  next.high_c = centre + half;
  setRanges(next);
}

void ChartPane::panTime(double share) {
  Ranges next = ranges();
  const double step = share * (next.to_s - next.from_s);
  next.from_s += step;
  next.to_s += step;
  const Ranges whole = wholeRecord();
  keep_within(next.from_s, next.to_s, whole.from_s, whole.to_s);
  setRanges(next);
}

void ChartPane::panTemperature(double share) {
  Ranges next = ranges();
  const double step = share * (next.high_c - next.low_c);
  next.low_c += step;
  next.high_c += step;
  setRanges(next);
}

void ChartPane::resetView() {
  if (!scene_.chart()) return;
  settleView();
  setRanges(wholeRecord());
}

void ChartPane::fitTemperature() {
  if (!scene_.chart()) return;
  Ranges next = ranges();
  const auto [low, high] = temperaturesShown(next.from_s, next.to_s);
  const double pad = std::max(0.5, 0.06 * (high - low));
  next.low_c = low - pad;
  next.high_c = high + pad;
  setRanges(next);
}

void ChartPane::moveTo(double from_s, double to_s) {
  if (!scene_.chart()) return;
  settleView();
  const Ranges whole = wholeRecord();
  const double margin = std::max(0.6 * (to_s - from_s), 30.0 * scene_.chart()->record->interval_s);
  Ranges next{from_s - margin, to_s + margin, 0.0, 0.0};
  keep_within(next.from_s, next.to_s, whole.from_s, whole.to_s);
  auto [low, high] = temperaturesShown(next.from_s, next.to_s);
  if (scene_.evidence) {
    if (scene_.evidence->level_c) {
      low = std::min(low, *scene_.evidence->level_c);
      high = std::max(high, *scene_.evidence->level_c);
    }
    std::vector<ChartPoint> drawn = scene_.evidence->points;
    if (scene_.evidence->fit)
      drawn.insert(drawn.end(), {scene_.evidence->fit->first, scene_.evidence->fit->second});
    for (const ChartPoint& point : drawn) {
      low = std::min(low, point.level_c);
      high = std::max(high, point.level_c);
    }
  }
  const double pad = std::max(1.0, 0.10 * (high - low));
  next.low_c = low - pad;
  next.high_c = high + pad;
  setRanges(next);
}

void ChartPane::setPointer(std::optional<double> at_s) {
  if (scene_.pointer_s == at_s) return;
  scene_.pointer_s = at_s;
  plot_->layer(QStringLiteral("pointer"))->replot();
  emit pointerMoved(at_s);
}

void ChartPane::stepPointer(int rows) {
  if (!scene_.chart()) return;
  const std::vector<double>& times = scene_.chart()->record->times_s;
  const Ranges now = ranges();
  const double from = scene_.pointer_s.value_or(0.5 * (now.from_s + now.to_s));
  const auto nearest = std::lower_bound(times.begin(), times.end(), from - 1e-6) - times.begin();
  const auto row =
      std::clamp<std::ptrdiff_t>(nearest + rows, 0, static_cast<std::ptrdiff_t>(times.size()) - 1);
  const double at_s = times[static_cast<std::size_t>(row)];
  if (at_s < now.from_s || at_s > now.to_s) {
    Ranges next = now;
    next.from_s = at_s - 0.5 * (now.to_s - now.from_s);
    next.to_s = at_s + 0.5 * (now.to_s - now.from_s);
    setRanges(next);
  }
  setPointer(at_s);
}

void ChartPane::keyPressEvent(QKeyEvent* event) {
  const bool control = event->modifiers().testFlag(Qt::ControlModifier);
  const bool shift = event->modifiers().testFlag(Qt::ShiftModifier);
  if (event->matches(QKeySequence::Copy) && scene_.cursor_a && scene_.cursor_b) return emit copyWanted();
  if (event->modifiers().testFlag(Qt::AltModifier)) {
    if (event->key() == Qt::Key_Left) return previousView();
    if (event->key() == Qt::Key_Right) return nextView();
    return QWidget::keyPressEvent(event);
  }
  if (event->key() >= Qt::Key_1 && event->key() <= Qt::Key_9 && !control)
    return emit stageKeyed(static_cast<std::size_t>(event->key() - Qt::Key_1));
  switch (event->key()) {
    case Qt::Key_A:
      return setCursorHere('A');
    case Qt::Key_B:
      return setCursorHere('B');
    case Qt::Key_Left:
      return panTime(-kPanShare);
    case Qt::Key_Right:
      return panTime(kPanShare);
    case Qt::Key_Up:
      return control ? zoomTemperature(kStep) : panTemperature(kPanShare);
    case Qt::Key_Down:
      return control ? zoomTemperature(1.0 / kStep) : panTemperature(-kPanShare);
    case Qt::Key_Plus:
    case Qt::Key_Equal:
      return zoomTime(kStep);
    case Qt::Key_Minus:
      return zoomTime(1.0 / kStep);
    case Qt::Key_Home:
    case Qt::Key_0:
      return resetView();
    case Qt::Key_F:
      return fitTemperature();
    case Qt::Key_Comma:
    case Qt::Key_Less:
      return stepPointer(shift ? -10 : -1);
    case Qt::Key_Period:
    case Qt::Key_Greater:
      return stepPointer(shift ? 10 : 1);
    case Qt::Key_Escape:
      if (scene_.pointer_s || scene_.emphasised) {
        setPointer(std::nullopt);
        emit traceClicked(std::nullopt);
        return;
      }
      if (scene_.cursor_a || scene_.cursor_b) return clearCursors();
      break;
    default:
      break;
  }
  QWidget::keyPressEvent(event);
}

void ChartPane::focusInEvent(QFocusEvent* event) {
  QWidget::focusInEvent(event);
  traces_rect_->axis(QCPAxis::atLeft)->setBasePen(QPen(palette().color(QPalette::Highlight), 2.0));
  replot();
}

void ChartPane::focusOutEvent(QFocusEvent* event) {
  QWidget::focusOutEvent(event);
  traces_rect_->axis(QCPAxis::atLeft)->setBasePen(QPen(scene_.colours.faint_ink));
  replot();
}

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
  const auto over_trace =
      said.isEmpty() && map.rect.contains(position.toPoint()) ? traceNear(position) : std::nullopt;
  if (over_trace) said = pdf::shown_text(scene_.chart()->traces[*over_trace].legend);
  plot_->setCursor(cursorNear(position) ? Qt::SplitHCursor : Qt::ArrowCursor);
  plot_->setToolTip(plain_tip(said));
  const bool over = position.x() >= map.rect.left() && position.x() <= map.rect.right();
  setPointer(over ? std::optional(map.from_s + (position.x() - map.left) / map.pixels_per_s) : std::nullopt);
}

void ChartPane::release(const QPointF& position) {
  const Drag was = drag_;
  drag_ = Drag::none;
  frame_->hide();
  if (was == Drag::none || was == Drag::cursor) return;
  if ((position - pressed_at_).manhattanLength() <= kClickSlack) {
    // Shift sets B and Ctrl sets A; without them a click chooses.
    if (was == Drag::time) return setCursor('A', timeAt(position.x()));
    if (was == Drag::frame && pressed_button_ == Qt::LeftButton) return setCursor('B', timeAt(position.x()));
    return click(position);
  }
  if (was == Drag::time) {
    const auto trace = scene_.emphasised ? scene_.emphasised : traceNear(pressed_at_);
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
