// SPDX-License-Identifier: GPL-3.0-or-later
// The chart's parts and what they show; moving over it is in chart_moves.cpp.

#include "app/gui/chart/chart_pane.h"

#include <QEvent>
#include <QRubberBand>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "app/gui/chart/chart_layers.h"
#include "app/gui/chart/chart_tickers.h"
#include "app/gui/chart/time_overview.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr double kMarginShare = 0.015;
constexpr int kViewSettles_ms = 500;  ///< a wheel turned further, a drag going on are one view

}  // namespace

ChartPane::ChartPane(QWidget* parent) : QWidget(parent), plot_(new QCustomPlot(this)) {
  setFocusPolicy(Qt::StrongFocus);
  setAccessibleName(tr("Chart"));
  setAccessibleDescription(
      tr("Temperature over time. Arrow keys move, plus and minus zoom in time, Ctrl with up and down in "
         "temperature, Home shows the whole record, comma and full stop move the reading line."));
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(plot_, 1);
  overview_ =
      new TimeOverview([this](double from_s, double to_s) { return extremesShown(from_s, to_s); }, this);
  layout->addWidget(overview_);
  connect(overview_, &TimeOverview::wanted, this, [this](const TimeSpan& shown) {
    const Ranges now = ranges();
    setRanges({shown.from_s, shown.to_s, now.low_c, now.high_c});
  });
  connect(plot_, &QCustomPlot::afterLayout, this,
          [this] { overview_->setEnds(traces_rect_->left(), traces_rect_->right()); });
  plot_->setFocusPolicy(Qt::NoFocus);
  plot_->setMouseTracking(true);
  plot_->installEventFilter(this);
  frame_ = new QRubberBand(QRubberBand::Rectangle, plot_);

  plot_->plotLayout()->clear();
  traces_rect_ = new QCPAxisRect(plot_);
  lanes_rect_ = new QCPAxisRect(plot_);
  for (CurvePane& pane : below_) pane.rect = new QCPAxisRect(plot_);
  plot_->plotLayout()->setRowSpacing(0);
  auto* sides = new QCPMarginGroup(plot_);
  for (QCPAxisRect* rect : rects()) {
    rect->setMarginGroup(QCP::msLeft | QCP::msRight, sides);
    rect->setMinimumMargins(QMargins(64, 4, 12, 2));
    for (QCPAxis* axis : rect->axes()) axis->setLayer(QStringLiteral("axes"));
    for (QCPAxis* axis : rect->axes()) axis->grid()->setLayer(QStringLiteral("grid"));
  }
  for (const auto type : {QCPAxis::atBottom, QCPAxis::atLeft}) lanes_rect_->axis(type)->setVisible(false);
  traces_rect_->setupFullAxesBox(false);
  for (const auto type : {QCPAxis::atTop, QCPAxis::atRight}) {
    traces_rect_->axis(type)->setTicks(false);
    traces_rect_->axis(type)->setTickLabels(false);
  }

  clock_ = QSharedPointer<ClockTicker>::create();
  clock_->setTickCount(8);
  thermometer_ = QSharedPointer<TemperatureTicker>::create();
  thermometer_->setTickCount(7);
  traces_rect_->axis(QCPAxis::atBottom)->setTicker(clock_);
  traces_rect_->axis(QCPAxis::atLeft)->setTicker(thermometer_);
  lanes_rect_->axis(QCPAxis::atLeft)->setRange(0, 1);

  plot_->addLayer(QStringLiteral("backdrop"), plot_->layer(QStringLiteral("grid")), QCustomPlot::limBelow);
  plot_->addLayer(QStringLiteral("words"), plot_->layer(QStringLiteral("grid")), QCustomPlot::limAbove);
  for (const char* name : {"traces", "evidence", "pointer"}) {
    plot_->addLayer(QLatin1String(name), plot_->layer(QStringLiteral("axes")), QCustomPlot::limAbove);
  }
  // Added one above the axes each time, they stand in the order pointer, evidence, traces from below: put
  // right.
  plot_->moveLayer(plot_->layer(QStringLiteral("evidence")), plot_->layer(QStringLiteral("traces")));
  plot_->moveLayer(plot_->layer(QStringLiteral("pointer")), plot_->layer(QStringLiteral("evidence")));
  plot_->layer(QStringLiteral("pointer"))->setMode(QCPLayer::lmBuffered);
  new BackdropLayer(plot_, QStringLiteral("backdrop"), traces_rect_, &scene_);
  new RequiredLayer(plot_, QStringLiteral("words"), traces_rect_, &scene_);
  new WordLayer(plot_, QStringLiteral("words"), traces_rect_, &scene_);
  new OverlayLayer(plot_, QStringLiteral("traces"), traces_rect_, &scene_);
  new TraceLayer(plot_, QStringLiteral("traces"), traces_rect_, &scene_);
  new EvidenceLayer(plot_, QStringLiteral("evidence"), traces_rect_, &scene_);
  new PointerLayer(plot_, QStringLiteral("pointer"), traces_rect_, &scene_);
  new TagLayer(plot_, QStringLiteral("traces"), traces_rect_, &scene_);
  new CursorLayer(plot_, QStringLiteral("pointer"), traces_rect_, &scene_, true);
  new LimitLayer(plot_, QStringLiteral("pointer"), traces_rect_, &scene_);
  lanes_ = new LaneLayer(plot_, QStringLiteral("traces"), lanes_rect_, &scene_);
  buildCurves();
  // Nothing of ours is on them, and layers above the pointer's would each need a picture of the chart's size.
  for (const char* name : {"overlay", "legend"}) plot_->removeLayer(plot_->layer(QLatin1String(name)));
  layOutPanes();
  view_timer_.setSingleShot(true);
  view_timer_.setInterval(kViewSettles_ms);
  connect(&view_timer_, &QTimer::timeout, this, [this] { keepView(true); });
  applyColours();
}

ChartPane::~ChartPane() = default;

void ChartPane::show(std::shared_ptr<const Report> report, std::shared_ptr<const Verdicts> verdicts,
                     std::shared_ptr<const TraceSet> traces, bool keep_view) {
  scene_.report = std::move(report);
  scene_.verdicts = std::move(verdicts);
  scene_.traces = std::move(traces);
  scene_.evidence = nullptr;
  scene_.mark.reset();
  scene_.chosen_time.reset();
  scene_.emphasised.clear();
  movable_.clear();
  letGoOfLimit();
  if (!keep_view) {
    setPointer(std::nullopt);
    clearCursors();
    views_.clear();
    view_ = 0;
  }
  const Chart* chart = scene_.chart();
  if (chart) {
    scene_.pens = trace_pens(*chart, scene_.colours);
    if (scene_.visible.size() != chart->record->channels.size())
      scene_.visible.assign(chart->record->channels.size(), true);
    clock_->setRecord(chart->record);
    thermometer_->setUnit(chart->unit);
    for (CurvePane& pane : below_) pane.ticker->setUnit(chart->unit);
    nameCurves();
    layOutMargins();
    labelTimeAxis();
    traces_rect_->axis(QCPAxis::atLeft)->setLabel(pdf::shown_text(chart->temperature_axis));
  }
  layOutLanes();
  layOutOverview();
  if (!keep_view) {
    resetView();
    settleView();
  }
  fitCurves();
  replot();
}

void ChartPane::countTimeFrom(TimeOrigin origin) {
  time_origin_ = origin;
  labelTimeAxis();
  replot();
}

/// Where no hold was found, its start is none: then the recorder's clock stays.
void ChartPane::labelTimeAxis() {
  const Chart* chart = scene_.chart();
  if (!chart) return;
  std::optional<double> from_s;
  if (time_origin_ == TimeOrigin::record) from_s = chart->record->begin_s();
  if (time_origin_ == TimeOrigin::hold)
    for (const ChartRange& range : chart->ranges)
      if (range.reached) from_s = std::min(from_s.value_or(range.from_s), range.from_s);
  clock_->countFrom(from_s);
  traces_rect_->axis(QCPAxis::atBottom)
      ->setLabel(!from_s                              ? pdf::shown_text(chart->time_axis)
                 : time_origin_ == TimeOrigin::record ? tr("Time from the start of the record")
                                                      : tr("Time from the start of the hold"));
}

void ChartPane::layOutLanes() {
  const int height = scene_.chart() ? LaneLayer::heightFor(*scene_.chart(), fontMetrics().height()) : 0;
  lanes_rect_->setMinimumSize(0, height + 4);
  lanes_rect_->setMaximumSize(QWIDGETSIZE_MAX, height + 4);
}

void ChartPane::setVisibleChannels(std::vector<bool> visible) {
  scene_.visible = std::move(visible);
  fitDifferences();
  layOutOverview();
  replot();
}

void ChartPane::showEvidence(const Evidence* evidence) {
  scene_.evidence = evidence;
  scene_.mark.reset();
  scene_.chosen_time.reset();
  scene_.emphasised.clear();
  if (evidence && evidence->from_s && evidence->to_s) {
    moveTo(*evidence->from_s, *evidence->to_s);
  } else if (evidence && evidence->at_s) {
    moveTo(*evidence->at_s, *evidence->at_s);
  } else if (evidence) {
    resetView();
  }
  replot();
}

void ChartPane::showPlace(std::optional<std::pair<double, double>> time, std::optional<std::size_t> trace,
                          std::optional<std::size_t> mark) {
  scene_.evidence = nullptr;
  scene_.chosen_time = time;
  scene_.mark = mark;
  scene_.emphasised.clear();
  if (trace) scene_.emphasised.push_back(*trace);
  if (time) moveTo(time->first, time->second);
  replot();
}

void ChartPane::emphasise(std::vector<std::size_t> traces) {
  if (scene_.emphasised == traces) return;
  scene_.emphasised = std::move(traces);
  replot();
}

void ChartPane::applyColours() {
  scene_.colours = ChartColours::of(palette());
  const ChartColours& colours = scene_.colours;
  if (scene_.chart()) scene_.pens = trace_pens(*scene_.chart(), colours);
  plot_->setBackground(QBrush(colours.background));
  overview_->setColours(colours);
  QFont small = font();
  small.setPointSizeF(std::max(7.5, small.pointSizeF() * 0.92));
  std::vector<QCPAxis*> axes;
  for (QCPAxisRect* rect : rects())
    if (rect != lanes_rect_)
      for (QCPAxis* axis : rect->axes()) axes.push_back(axis);
  for (QCPAxis* axis : axes) {
    axis->setBasePen(QPen(colours.faint_ink));
    axis->setTickPen(QPen(colours.faint_ink));
    axis->setSubTickPen(QPen(colours.faint_ink));
    axis->setTickLabelColor(colours.ink);
    axis->setLabelColor(colours.faint_ink);
    axis->setTickLabelFont(small);
    axis->setLabelFont(small);
    axis->grid()->setPen(QPen(colours.grid, 1.0));
    axis->grid()->setZeroLinePen(QPen(colours.grid, 1.0));
  }
}

void ChartPane::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() != QEvent::PaletteChange && event->type() != QEvent::FontChange) return;
  applyColours();
  layOutLanes();
  layOutMargins();
  replot();
  emit coloursChanged();
}

void ChartPane::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  layOutPanes();
  layOutOverview();
  clock_->setTickCount(std::clamp(width() / 110, 3, 14));
  thermometer_->setTickCount(std::clamp(height() / 60, 3, 10));
}

QPen ChartPane::penOf(std::size_t trace) const {
  return trace < scene_.pens.size() ? scene_.pens[trace] : QPen();
}

void ChartPane::redrawNow() { plot_->replot(QCustomPlot::rpImmediateRefresh); }

void ChartPane::replot() { plot_->replot(QCustomPlot::rpQueuedReplot); }

ChartPane::Ranges ChartPane::ranges() const {
  const QCPRange time = traces_rect_->axis(QCPAxis::atBottom)->range();
  const QCPRange celsius = traces_rect_->axis(QCPAxis::atLeft)->range();
  return {time.lower, time.upper, celsius.lower, celsius.upper};
}

void ChartPane::setRanges(const Ranges& ranges) {
  for (QCPAxisRect* rect : rects()) rect->axis(QCPAxis::atBottom)->setRange(ranges.from_s, ranges.to_s);
  traces_rect_->axis(QCPAxis::atLeft)->setRange(ranges.low_c, ranges.high_c);
  fitDifferences();
  overview_->setShown({ranges.from_s, ranges.to_s});
  keepView(false);
  replot();
}

std::pair<double, double> ChartPane::temperaturesShown(double from_s, double to_s) const {
  return extremesShown(from_s, to_s).value_or(std::pair{0.0, 100.0});
}

std::optional<std::pair<double, double>> ChartPane::extremesShown(double from_s, double to_s) const {
  double low = std::numeric_limits<double>::infinity();
  double high = -low;
  if (scene_.chart() && scene_.traces) {
    const std::vector<double>& times = scene_.chart()->record->times_s;
    const auto first =
        static_cast<std::size_t>(std::lower_bound(times.begin(), times.end(), from_s) - times.begin());
    const auto last =
        static_cast<std::size_t>(std::upper_bound(times.begin(), times.end(), to_s) - times.begin());
    const std::vector<ChartTrace>& all = scene_.chart()->traces;
    for (std::size_t i = 0; i < all.size(); ++i) {
      if (!scene_.shows(i)) continue;
      const auto extremes = scene_.traces->channels[all[i].channel].extremes(first, last);
      if (std::isnan(extremes.lowest)) continue;
      low = std::min(low, static_cast<double>(extremes.lowest));
      high = std::max(high, static_cast<double>(extremes.highest));
    }
  }
  return low <= high ? std::optional(std::pair{low, high}) : std::nullopt;
}

ChartPane::Ranges ChartPane::wholeRecord() const {
  const Chart* chart = scene_.chart();
  if (!chart) return {};
  const double margin = std::max(1.0, kMarginShare * (chart->end_s - chart->begin_s));
  auto [low, high] = temperaturesShown(chart->begin_s, chart->end_s);
  const double reach = high + 0.25 * (high - low);
  for (const ChartLevel& level : chart->levels)
    if (level.level_c < reach) high = std::max(high, level.level_c);
  for (const ChartRange& range : chart->ranges)
    if (range.high_c.value_or(range.low_c) < reach) high = std::max(high, range.high_c.value_or(range.low_c));
  double from_s = chart->begin_s;
  double to_s = chart->end_s;
  if (scene_.overlay) {
    const Chart& other = scene_.overlay->report->chart;
    from_s = std::min(from_s, other.begin_s + scene_.overlay->offset_s);
    to_s = std::max(to_s, other.end_s + scene_.overlay->offset_s);
  }
  const double pad = std::max(1.0, 0.05 * (high - low));
  return {from_s - margin, to_s + margin, low - pad, high + pad};
}

}  // namespace soakwright::gui
