// SPDX-License-Identifier: GPL-3.0-or-later
// Rates, spreads and differences below the temperatures, on the same time axis, with the limits that they
// were held to.

#include <algorithm>
#include <cmath>

#include "app/gui/chart/chart_layers.h"
#include "app/gui/chart/curve_set.h"

namespace soakwright::gui {

void CurveLayer::draw(QCPPainter* painter) {
  const Chart* chart = scene().chart();
  const CurveSet* set = scene().curves.get();
  if (!chart || !axisRect() || !axisRect()->visible()) return;
  const PixelMap map(*axisRect());
  const ChartColours& colours = scene().colours;
  if (!set || set->record != chart->record) return drawName(painter, map, name_);

  const auto draw_all = [&](bool followed) {
    if (kind_ == Kind::spread) {
      if (!followed) return;
      for (std::size_t i = 0; i < set->spreads.size(); ++i)
        drawCurve(painter, map, set->spreads[i],
                  QPen(colours.ink, 1.4, i % 2 == 0 ? Qt::SolidLine : Qt::DashLine));
      return;
    }
    const bool rates = kind_ == Kind::rate;
    const std::vector<TracePyramid>& pyramids = rates ? set->rates : set->differences;
    const std::vector<Readings>& curves = rates ? set->curves.rates : set->curves.differences;
    for (std::size_t i = 0; i < chart->traces.size(); ++i) {
      const std::size_t channel = chart->traces[i].channel;
      if (!scene().shows(i) || scene().followed(i) != followed || channel >= pyramids.size()) continue;
      if (curves[channel].rows() == 0) continue;
      QPen pen = scene().pens[i];
      if (!followed) pen.setColor(mixed(pen.color(), colours.background, kFadedShare));
      drawCurve(painter, map, pyramids[channel], pen);
    }
  };
  beginParts(painter, map);
  draw_all(false);
  draw_all(true);
  endParts(painter, map);

  // Nothing limits a difference from one channel.
  std::vector<CurveLimit> limits;
  if (kind_ != Kind::difference)
    limits = kind_ == Kind::spread ? set->curves.spread_limits : set->curves.rate_limits;
  for (const CurveLimit& limit : limits) {
    const double y = map.y(limit.value);
    const double from = std::max(map.x(limit.from_s), static_cast<double>(map.rect.left()));
    const double to = std::min(map.x(limit.to_s), static_cast<double>(map.rect.right()));
    if (to <= from) continue;
    painter->setPen(QPen(colours.temperature_max, 1.6));
    painter->drawLine(QPointF(from, y), QPointF(to, y));
  }
  drawName(painter, map, name_);
}

void CurveLayer::drawCurve(QCPPainter* painter, const PixelMap& map, const TracePyramid& pyramid,
                           const QPen& pen) {
  setPartPen(painter, pen);
  drawPart(painter, map, pyramid, {scene().chart(), map.from_s, map.to_s});
}

std::pair<double, double> curve_range(const ChartScene& scene, CurveKind kind) {
  double low = 0.0;
  double high = 0.0;
  const CurveSet* set = scene.curves.get();
  const Chart* chart = scene.chart();
  if (!set || !chart || set->record != chart->record) return {0.0, 1.0};
  const auto take = [&](const TracePyramid& pyramid) {
    const auto extremes = pyramid.extremes(0, chart->record->rows());
    if (std::isnan(extremes.lowest)) return;
    low = std::min(low, static_cast<double>(extremes.lowest));
    high = std::max(high, static_cast<double>(extremes.highest));
  };
  if (kind == CurveKind::spread) {
    for (const TracePyramid& spread : set->spreads) take(spread);
    // A limit far above what was measured needs no room: the curve would be a line on the axis.
    for (const CurveLimit& limit : set->curves.spread_limits)
      if (limit.value < 2.0 * high) high = std::max(high, limit.value);
  } else {
    for (const ChartTrace& trace : chart->traces)
      if (trace.channel < set->rates.size() && set->curves.rates[trace.channel].rows() > 0)
        take(set->rates[trace.channel]);
    for (const CurveLimit& limit : set->curves.rate_limits) {
      high = std::max(high, limit.value);
      low = std::min(low, limit.value);
    }
  }
  const double pad = std::max(0.5, 0.08 * (high - low));
  return {kind == CurveKind::spread ? 0.0 : low - pad, high + pad};
}

std::pair<double, double> difference_range(const ChartScene& scene, double from_s, double to_s) {
  double low = 0.0;
  double high = 0.0;
  const CurveSet* set = scene.curves.get();
  const Chart* chart = scene.chart();
  if (set && chart && set->record == chart->record && !set->differences.empty()) {
    const std::vector<double>& times = chart->record->times_s;
    const auto first = std::lower_bound(times.begin(), times.end(), from_s) - times.begin();
    const auto last = std::upper_bound(times.begin(), times.end(), to_s) - times.begin();
    for (std::size_t i = 0; i < chart->traces.size(); ++i) {
      const std::size_t channel = chart->traces[i].channel;
      // The air outside is hundreds of degrees away: what is evaluated decides.
      if (chart->traces[i].role != ChartTrace::Role::evaluated || !scene.shows(i)) continue;
      if (set->curves.differences[channel].rows() == 0) continue;
      const auto extremes =
          set->differences[channel].extremes(static_cast<std::size_t>(first), static_cast<std::size_t>(last));
      if (std::isnan(extremes.lowest)) continue;
      low = std::min(low, static_cast<double>(extremes.lowest));
      high = std::max(high, static_cast<double>(extremes.highest));
    }
  }
  const double pad = std::max(0.5, 0.08 * (high - low));
  return {low - pad, high + pad};
}

}  // namespace soakwright::gui
