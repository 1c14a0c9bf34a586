// SPDX-License-Identifier: GPL-3.0-or-later
// What was measured for the chosen requirement, over the traces; and the line at the pointer.

#include <algorithm>
#include <cmath>

#include "app/gui/chart/chart_labels.h"
#include "app/gui/chart/chart_layers.h"

namespace soakwright::gui {
namespace {

constexpr double kPoint = 4.5;

QPen cosmetic(const QColor& colour, double width, Qt::PenStyle style = Qt::SolidLine) {
  QPen pen(colour, width, style);
  pen.setCosmetic(true);
  return pen;
}

}  // namespace

void EvidenceLayer::drawPoints(QCPPainter* painter, const PixelMap& map, const Evidence& evidence) {
  const ChartColours& colours = scene().colours;
  painter->setPen(cosmetic(colours.evidence, 1.6));
  painter->setBrush(colours.background);
  for (const ChartPoint* point : evidence_points(evidence))
    painter->drawEllipse(QPointF(map.x(point->at_s), map.y(point->level_c)), kPoint, kPoint);
  QColor veil = colours.background;
  veil.setAlphaF(0.88F);
  for (const ChartLabel& label : chart_labels(scene(), map, QFontMetricsF(painter->font()))) {
    if (label.kind != ChartLabel::Kind::point) continue;
    painter->setPen(cosmetic(colours.grid, 1.0));
    painter->setBrush(veil);
    painter->drawRoundedRect(label.box, 3, 3);
    painter->setPen(colours.evidence);
    painter->drawText(label.box, Qt::AlignCenter, label.text);
  }
}

void EvidenceLayer::draw(QCPPainter* painter) {
  if (!scene().chart() || !axisRect()) return;
  const PixelMap map(*axisRect());
  const ChartColours& colours = scene().colours;
  const auto edges = [&](double from_s, double to_s) {
    painter->setPen(cosmetic(colours.evidence, 1.0, Qt::DashLine));
    for (const double at_s : {from_s, to_s})
      painter->drawLine(QPointF(map.x(at_s), map.rect.top()), QPointF(map.x(at_s), map.rect.bottom()));
  };
  if (scene().chosen_time) edges(scene().chosen_time->first, scene().chosen_time->second);
  const Evidence* evidence = scene().evidence;
  if (!evidence) return;
  if (evidence->from_s && evidence->to_s) edges(*evidence->from_s, *evidence->to_s);
  if (evidence->level_c) {
    painter->setPen(cosmetic(colours.evidence, 1.4, Qt::DashDotLine));
    painter->drawLine(QPointF(map.rect.left(), map.y(*evidence->level_c)),
                      QPointF(map.rect.right(), map.y(*evidence->level_c)));
  }
  if (evidence->fit) {
    const auto& [from, to] = *evidence->fit;
    painter->setPen(cosmetic(colours.background, 5.0));
    painter->drawLine(QPointF(map.x(from.at_s), map.y(from.level_c)),
                      QPointF(map.x(to.at_s), map.y(to.level_c)));
    painter->setPen(cosmetic(colours.evidence, 2.4));
    painter->drawLine(QPointF(map.x(from.at_s), map.y(from.level_c)),
                      QPointF(map.x(to.at_s), map.y(to.level_c)));
  }
  // The two ends of a spread stand at one moment: a line joins them.
  if (evidence->points.size() == 2 && std::abs(evidence->points[0].at_s - evidence->points[1].at_s) < 1e-3) {
    painter->setPen(cosmetic(colours.evidence, 2.4));
    painter->drawLine(QPointF(map.x(evidence->points[0].at_s), map.y(evidence->points[0].level_c)),
                      QPointF(map.x(evidence->points[1].at_s), map.y(evidence->points[1].level_c)));
  }
  drawPoints(painter, map, *evidence);
}

void PointerLayer::draw(QCPPainter* painter) {
  const Chart* chart = scene().chart();
  if (!chart || !axisRect() || !scene().pointer_s) return;
  const PixelMap map(*axisRect());
  const ChartColours& colours = scene().colours;
  const double x = map.x(*scene().pointer_s);
  painter->setPen(cosmetic(colours.faint_ink, 1.0));
  painter->drawLine(QPointF(x, map.rect.top()), QPointF(x, map.rect.bottom()));
  const std::vector<double>& times = chart->record->times_s;
  const auto row = static_cast<std::size_t>(
      std::min(std::lower_bound(times.begin(), times.end(), *scene().pointer_s - 1e-6) - times.begin(),
               static_cast<std::ptrdiff_t>(times.size()) - 1));
  for (std::size_t i = 0; i < chart->traces.size(); ++i) {
    if (!scene().shows(i)) continue;
    const auto celsius = chart->traces[i].readings.celsius(row);
    if (!celsius) continue;
    painter->setPen(cosmetic(colours.background, 1.0));
    painter->setBrush(scene().pens[i].color());
    painter->drawEllipse(QPointF(map.x(times[row]), map.y(*celsius)), 3.0, 3.0);
  }
}

}  // namespace soakwright::gui
