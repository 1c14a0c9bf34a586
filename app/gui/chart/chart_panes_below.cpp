// SPDX-License-Identifier: GPL-3.0-or-later
// Panes below the temperatures, cursors, and the views that were visited.

#include <algorithm>
#include <cmath>

#include "app/gui/chart/chart_layers.h"
#include "app/gui/chart/chart_pane.h"
#include "app/gui/chart/chart_tickers.h"
#include "app/gui/chart/curve_set.h"
#include "app/gui/chart/time_overview.h"
#include "app/gui/texts/reading_text.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr int kLeftMargin = 64;
constexpr int kTopMargin = 6;
constexpr int kCurveHeight = 74;
constexpr int kLeastCurveHeight = 30;
constexpr int kShareOfCurve = 6;            ///< a curve pane takes no more than a sixth of the chart
constexpr double kShareOfCurves = 0.42;     ///< nor all of them with their names more than this
constexpr int kLeastHeightForCurves = 250;  ///< of the chart; below it the temperatures need all the room
constexpr std::size_t kMostViews = 60;
constexpr double kNearCursor = 5.0;  ///< pixels

}  // namespace

void ChartPane::buildCurves() {
  for (const CurveKind kind : {CurveKind::difference, CurveKind::spread, CurveKind::rate}) {
    CurvePane& pane = below(kind);
    pane.kind = kind;
    pane.layer = new CurveLayer(plot_, QStringLiteral("traces"), pane.rect, &scene_, kind);
    new CursorLayer(plot_, QStringLiteral("pointer"), pane.rect, &scene_, false);
    pane.ticker = QSharedPointer<RateTicker>::create();
    pane.ticker->setTickCount(3);
    pane.rect->setupFullAxesBox(false);
    for (const auto type : {QCPAxis::atTop, QCPAxis::atRight, QCPAxis::atBottom}) {
      pane.rect->axis(type)->setTicks(type == QCPAxis::atBottom);
      pane.rect->axis(type)->setTickLabels(false);
    }
    pane.rect->axis(QCPAxis::atBottom)->setTicker(clock_);
    pane.rect->axis(QCPAxis::atLeft)->setTicker(pane.ticker);
  }
}

void ChartPane::nameCurves() {
  const Chart& chart = *scene_.chart();
  const QString degree = unit_sign(chart.unit);
  below(CurveKind::rate).layer->setName(tr("Rate, %1/h").arg(degree));
  below(CurveKind::spread).layer->setName(tr("Spread, %1").arg(degree));
  const bool worked_out = scene_.curves && scene_.curves->record == chart.record;
  const auto reference = worked_out ? scene_.curves->has.differences_from : std::nullopt;
  const QString of = reference ? pdf::shown_text(chart.record->channels[*reference].name) : QString();
  below(CurveKind::difference)
      .layer->setName(reference ? tr("Difference from %1, %2").arg(of, degree)
                                : tr("Difference, %1").arg(degree));
}

std::vector<QCPAxisRect*> ChartPane::rects() const {
  std::vector<QCPAxisRect*> all{traces_rect_};
  for (const CurvePane& pane : below_) all.push_back(pane.rect);
  all.push_back(lanes_rect_);
  return all;
}

bool ChartPane::roomForCurves() const { return height() >= kLeastHeightForCurves; }

/// To the right the traces' names, above a pane its name, above the temperatures that of a record laid over.
void ChartPane::layOutMargins() {
  if (!scene_.chart()) return;
  QFont small = font();
  small.setPointSizeF(std::max(7.5, small.pointSizeF() * 0.92));
  const int right = tag_width(*scene_.chart(), QFontMetrics(small));
  const int name = PolylineLayer::nameHeight(plot_->font());
  traces_rect_->setMinimumMargins(QMargins(kLeftMargin, scene_.overlay ? name : kTopMargin, right, 2));
  for (const CurvePane& pane : below_) pane.rect->setMinimumMargins(QMargins(kLeftMargin, name, right, 2));
  lanes_rect_->setMinimumMargins(QMargins(kLeftMargin, 3, right, 2));
}

void ChartPane::showOverview(bool shown) {
  overview_shown_ = shown;
  layOutOverview();
}

void ChartPane::layOutOverview() {
  const Ranges whole = wholeRecord();
  overview_->setVisible(overview_shown_ && scene_.chart() && roomForCurves());
  overview_->setWhole({whole.from_s, whole.to_s});
}

void ChartPane::setOverlay(std::optional<ChartOverlay> overlay) {
  scene_.overlay = std::move(overlay);
  layOutMargins();
  layOutOverview();
  replot();
}

void ChartPane::setRequired(std::shared_ptr<const RequiredCycle> required) {
  scene_.required = std::move(required);
  replot();
}

void ChartPane::showRequired(bool shown) {
  scene_.shows_required = shown;
  replot();
}

/// Those that are shown, from top to bottom.
void ChartPane::layOutPanes() {
  QCPLayoutGrid* grid = plot_->plotLayout();
  for (QCPAxisRect* rect : rects())
    if (rect->layout()) grid->take(rect);
  grid->simplify();
  const auto shown_panes =
      std::count_if(below_.begin(), below_.end(), [](const CurvePane& one) { return one.shown; });
  const double room =
      kShareOfCurves * this->height() / static_cast<double>(std::max<std::ptrdiff_t>(1, shown_panes));
  const int most = std::min({static_cast<int>(room) - PolylineLayer::nameHeight(plot_->font()),
                             this->height() / kShareOfCurve, kCurveHeight});
  const int height = std::max(most, kLeastCurveHeight);
  int row = 0;
  grid->addElement(row++, 0, traces_rect_);
  for (CurvePane& pane : below_) {
    pane.rect->setMinimumSize(0, height);
    pane.rect->setMaximumSize(QWIDGETSIZE_MAX, height);
    const bool shown = pane.shown && roomForCurves();
    pane.rect->setVisible(shown);
    if (shown) grid->addElement(row++, 0, pane.rect);
  }
  grid->addElement(row, 0, lanes_rect_);
  replot();
}

void ChartPane::setCurves(std::shared_ptr<const CurveSet> curves) {
  scene_.curves = std::move(curves);
  if (scene_.chart()) nameCurves();
  fitCurves();
  replot();
}

void ChartPane::fitCurves() {
  for (const CurvePane& pane : below_) {
    if (pane.kind == CurveKind::difference) continue;
    const auto [low, high] = curve_range(scene_, pane.kind);
    pane.rect->axis(QCPAxis::atLeft)->setRange(low, high);
  }
  fitDifferences();
}

/// To what is in view: 5 °C in a hold are to be seen, and during a ramp the differences are ten times that.
void ChartPane::fitDifferences() {
  const CurvePane& pane = below(CurveKind::difference);
  if (!pane.shown) return;
  const Ranges now = ranges();
  const auto [low, high] = difference_range(scene_, now.from_s, now.to_s);
  pane.rect->axis(QCPAxis::atLeft)->setRange(low, high);
}

void ChartPane::showCurves(CurveKind kind, bool shown) {
  below(kind).shown = shown;
  fitCurves();
  layOutPanes();
}

bool ChartPane::curvesShown(CurveKind kind) const { return below_[static_cast<std::size_t>(kind)].shown; }

std::pair<double, double> ChartPane::curveRange(CurveKind kind) const {
  const QCPRange range = below_[static_cast<std::size_t>(kind)].rect->axis(QCPAxis::atLeft)->range();
  return {range.lower, range.upper};
}

double ChartPane::timeAt(double x) const {
  const PixelMap map(*traces_rect_);
  return map.from_s + (x - map.left) / map.pixels_per_s;
}

void ChartPane::setCursor(char name, std::optional<double> at_s) {
  std::optional<double>& cursor = name == 'A' ? scene_.cursor_a : scene_.cursor_b;
  if (at_s && scene_.chart()) at_s = std::clamp(*at_s, scene_.chart()->begin_s, scene_.chart()->end_s);
  if (cursor == at_s) return;
  cursor = at_s;
  plot_->layer(QStringLiteral("pointer"))->replot();
  emit cursorsChanged();
}

double ChartPane::momentChosen() const {
  const Ranges now = ranges();
  return scene_.pointer_s.value_or(0.5 * (now.from_s + now.to_s));
}

void ChartPane::setCursorHere(char name) {
  if (scene_.chart()) setCursor(name, momentChosen());
}

void ChartPane::clearCursors() {
  setCursor('A', std::nullopt);
  setCursor('B', std::nullopt);
}

std::optional<char> ChartPane::cursorNear(const QPointF& position) const {
  const PixelMap map(*traces_rect_);
  for (const char name : {'A', 'B'}) {
    const auto at_s = cursor(name);
    if (at_s && std::abs(map.x(*at_s) - position.x()) <= kNearCursor &&
        position.y() <= lanes_rect_->rect().top())
      return name;
  }
  return std::nullopt;
}

/// A view counts once it has stood still: what comes before the next change of it can be gone back to.
void ChartPane::keepView(bool settled) {
  const Ranges now = ranges();
  if (!settled) {
    view_timer_.start();
    return;
  }
  if (view_ < views_.size() && views_[view_] == now) return;
  if (!views_.empty()) views_.resize(view_ + 1);
  views_.push_back(now);
  if (views_.size() > kMostViews) views_.erase(views_.begin());
  view_ = views_.size() - 1;
}

void ChartPane::settleView() {
  if (!view_timer_.isActive()) return;
  view_timer_.stop();
  keepView(true);
}

void ChartPane::goToView(std::size_t view) {
  view_ = view;
  setRanges(views_[view]);
}

void ChartPane::previousView() {
  settleView();
  if (view_ > 0) goToView(view_ - 1);
}

void ChartPane::nextView() {
  settleView();
  if (view_ + 1 < views_.size()) goToView(view_ + 1);
}

}  // namespace soakwright::gui
