// SPDX-License-Identifier: GPL-3.0-or-later
// The course strip: what the record shows by itself, what is required, and where the findings are, on one
// time axis.

#include <algorithm>

#include "app/gui/chart/chart_layers.h"
#include "app/gui/verdict_sign.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr double kGap = 2.0;
constexpr double kSmallestMark = 12.0;

QRectF lane_box(const QRect& rect, std::size_t lane, std::size_t lanes) {
  const double height = static_cast<double>(rect.height()) / static_cast<double>(lanes);
  return {static_cast<double>(rect.left()), rect.top() + height * static_cast<double>(lane) + 0.5 * kGap,
          static_cast<double>(rect.width()), height - kGap};
}

}  // namespace

std::vector<LaneLayer::Lane> LaneLayer::lanesOf(const Chart& chart) {
  std::vector<Lane> lanes;
  const auto put = [&lanes](const QString& label, const std::vector<ChartSegment>& segments,
                            const std::optional<std::string>* weld) {
    Lane lane;
    lane.label = label;
    for (const ChartSegment& segment : segments)
      if (!weld || segment.weld == *weld) lane.parts.push_back({&segment, segment.from_s, segment.to_s});
    // Heat and cool stages reach over the holds that bound them: there the hold is what counts.
    for (Part& part : lane.parts) {
      if (part.segment->kind != ChartSegment::Kind::heat && part.segment->kind != ChartSegment::Kind::cool)
        continue;
      for (const Part& hold : lane.parts) {
        if (hold.segment->kind != ChartSegment::Kind::hold) continue;
        if (hold.from_s <= part.from_s && hold.to_s < part.to_s)
          part.from_s = std::max(part.from_s, hold.to_s);
        if (hold.to_s >= part.to_s && hold.from_s > part.from_s) part.to_s = std::min(part.to_s, hold.from_s);
      }
    }
    if (!lane.parts.empty()) lanes.push_back(std::move(lane));
  };
  put(tr("recorded"), chart.phases, nullptr);
  std::vector<std::optional<std::string>> welds;
  for (const ChartSegment& stage : chart.stages)
    if (std::find(welds.begin(), welds.end(), stage.weld) == welds.end()) welds.push_back(stage.weld);
  for (const auto& weld : welds)
    put(welds.size() > 1 && weld ? pdf::shown_text(*weld) : tr("required"), chart.stages, &weld);
  put(tr("periods"), chart.periods, nullptr);
  if (!chart.marks.empty()) lanes.push_back({tr("findings"), {}, true});
  return lanes;
}

int LaneLayer::heightFor(const Chart& chart, int line_height) {
  return static_cast<int>(lanesOf(chart).size()) * (line_height + 6);
}

QRect LaneLayer::clipRect() const {
  // The lanes' names stand in the margin to the left.
  return axisRect() ? axisRect()->outerRect() : QRect();
}

void LaneLayer::drawSegment(QCPPainter* painter, const QRectF& box, const ChartSegment& segment) const {
  const ChartColours& colours = scene().colours;
  painter->setPen(Qt::NoPen);
  painter->setBrush(colours.of_segment(segment.kind));
  painter->drawRoundedRect(box.adjusted(0.5, 0, -0.5, 0), 2, 2);
  const QString text = painter->fontMetrics().elidedText(pdf::shown_text(segment.text), Qt::ElideRight,
                                                         static_cast<int>(box.width()) - 8);
  if (text.size() < 3) return;
  painter->setPen(colours.ink);
  painter->drawText(box.adjusted(4, 0, -4, 0), Qt::AlignVCenter | Qt::AlignLeft, text);
}

QRectF LaneLayer::markBox(const PixelMap& map, const QRectF& lane, const ChartMark& mark) const {
  const double from = map.x(mark.from_s);
  const double to = map.x(mark.to_s);
  const double spare = std::max(0.0, kSmallestMark - (to - from));
  return {from - 0.5 * spare, lane.top(), to - from + spare, lane.height()};
}

void LaneLayer::drawMarks(QCPPainter* painter, const PixelMap& map, const QRectF& lane) const {
  const Chart& chart = *scene().chart();
  const ChartColours& colours = scene().colours;
  for (std::size_t i = 0; i < chart.marks.size(); ++i) {
    const ChartMark& mark = chart.marks[i];
    const QRectF box = markBox(map, lane, mark).intersected(QRectF(map.rect).adjusted(-8, 0, 8, 0));
    if (box.isEmpty()) continue;
    const QColor colour = colours.of_finding(mark.kind);
    if (map.x(mark.to_s) - map.x(mark.from_s) > kSmallestMark)
      painter->fillRect(QRectF(box.left(), lane.center().y() - 1.5, box.width(), 3),
                        mixed(colour, colours.background, 0.5));
    draw_sign(*painter, box.center(), 0.32 * lane.height(), sign_of(mark.kind), colour, colours.background);
    if (scene().mark && *scene().mark == i) {
      painter->setPen(QPen(colours.evidence, 1.6));
      painter->setBrush(Qt::NoBrush);
      painter->drawEllipse(box.center(), 0.5 * lane.height(), 0.5 * lane.height());
    }
  }
}

void LaneLayer::draw(QCPPainter* painter) {
  const Chart* chart = scene().chart();
  if (!chart || !axisRect()) return;
  const PixelMap map(*axisRect());
  const std::vector<Lane> lanes = lanesOf(*chart);
  const QRect outer = axisRect()->outerRect();
  for (std::size_t i = 0; i < lanes.size(); ++i) {
    const QRectF lane = lane_box(map.rect, i, lanes.size());
    painter->setClipRect(outer);
    painter->setPen(scene().colours.faint_ink);
    painter->drawText(QRectF(outer.left(), lane.top(), map.rect.left() - outer.left() - 6, lane.height()),
                      Qt::AlignVCenter | Qt::AlignRight, lanes[i].label);
    painter->setClipRect(map.rect);
    painter->fillRect(lane, mixed(scene().colours.ink, scene().colours.background, 0.04));
    for (const Part& part : lanes[i].parts) {
      const QRectF box(QPointF(map.x(part.from_s), lane.top()), QPointF(map.x(part.to_s), lane.bottom()));
      const QRectF seen = box.intersected(QRectF(map.rect));
      if (!seen.isEmpty()) drawSegment(painter, seen, *part.segment);
    }
    if (lanes[i].marks) drawMarks(painter, map, lane);
  }
  painter->setClipping(false);
}

std::optional<LaneLayer::Hit> LaneLayer::hit(const QPointF& position) const {
  const Chart* chart = scene().chart();
  if (!chart || !axisRect() || !axisRect()->rect().contains(position.toPoint())) return std::nullopt;
  const PixelMap map(*axisRect());
  const std::vector<Lane> lanes = lanesOf(*chart);
  const double at_s = map.from_s + (position.x() - map.left) / map.pixels_per_s;
  for (std::size_t i = 0; i < lanes.size(); ++i) {
    const QRectF lane = lane_box(map.rect, i, lanes.size());
    if (!lane.contains(position)) continue;
    if (lanes[i].marks) {
      for (std::size_t m = chart->marks.size(); m-- > 0;)
        if (markBox(map, lane, chart->marks[m]).contains(position)) return Hit{Hit::Kind::finding, m};
      return std::nullopt;
    }
    for (const Part& part : lanes[i].parts) {
      if (at_s < part.from_s || at_s > part.to_s) continue;
      const ChartSegment* segment = part.segment;
      if (segment >= chart->phases.data() && segment < chart->phases.data() + chart->phases.size())
        return Hit{Hit::Kind::phase, static_cast<std::size_t>(segment - chart->phases.data())};
      if (segment >= chart->stages.data() && segment < chart->stages.data() + chart->stages.size())
        return Hit{Hit::Kind::stage, static_cast<std::size_t>(segment - chart->stages.data())};
    }
  }
  return std::nullopt;
}

QString LaneLayer::textAt(const QPointF& position) const {
  const auto found = hit(position);
  if (!found) return {};
  const Chart& chart = *scene().chart();
  switch (found->kind) {
    case Hit::Kind::phase:
      return pdf::shown_text(chart.phases[found->index].text);
    case Hit::Kind::stage:
      return pdf::shown_text(chart.stages[found->index].text);
    case Hit::Kind::finding:
      break;
  }
  const std::size_t finding = chart.marks[found->index].finding;
  return finding < scene().report->findings.size() ? pdf::shown_text(scene().report->findings[finding].text)
                                                   : QString();
}

}  // namespace soakwright::gui
