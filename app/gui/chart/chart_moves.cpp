// SPDX-License-Identifier: GPL-3.0-or-later
// Moving over the chart: zoom, pan, the reading line, and the keys for them.

#include <QContextMenuEvent>
#include <QKeyEvent>
#include <algorithm>
#include <cmath>

#include "app/gui/chart/chart_layers.h"
#include "app/gui/chart/chart_pane.h"
#include "app/gui/chart/chart_steps.h"

namespace soakwright::gui {

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
      if (drag_ == Drag::limit) return letGoOfLimit();
      if (scene_.pointer_s || !scene_.emphasised.empty()) {
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

/// The menu key; the right button is heard when it is let go, since it frames too.
void ChartPane::contextMenuEvent(QContextMenuEvent* event) {
  if (event->reason() != QContextMenuEvent::Keyboard || !scene_.chart()) return;
  emit menuWanted(momentChosen(), emphasised(), mapToGlobal(rect().center()));
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

}  // namespace soakwright::gui
