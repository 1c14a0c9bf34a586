// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/trace_marks.h"

#include <QPainterPath>
#include <QPainterPathStroker>
#include <array>
#include <cmath>

#include <qcustomplot.h>

namespace soakwright::gui {
namespace {

constexpr double kSize = 3.2;
constexpr double kLine = 1.2;
constexpr int kStampHalf = 5;               ///< pixels: the mark, half its line, and a part of a pixel
constexpr std::size_t kMostStamps = 1'000;  ///< more come only of many themes and screens

/// A mark about the origin: what is filled, and its line as an area.
struct MarkShape {
  QPolygonF inside, line;
};

MarkShape mark_shape(std::size_t shape) {
  const double r = kSize;
  QPainterPath path;
  switch (shape) {
    case 0:
      path.addEllipse(QPointF(), r, r);
      break;
    case 1:
      path.addRect(QRectF(-r, -r, 2 * r, 2 * r));
      break;
    case 2:
      path.addPolygon(QPolygonF(QList<QPointF>{{0, -r}, {r, r}, {-r, r}, {0, -r}}));
      break;
    case 3:
      path.addPolygon(QPolygonF(QList<QPointF>{{0, -r}, {r, 0}, {0, r}, {-r, 0}, {0, -r}}));
      break;
    case 4:
      path.addPolygon(QPolygonF(QList<QPointF>{{0, r}, {r, -r}, {-r, -r}, {0, r}}));
      break;
    default:
      path.moveTo(-r, -r);
      path.lineTo(r, r);
      path.moveTo(-r, r);
      path.lineTo(r, -r);
  }
  const QPainterPathStroker stroker(QPen(Qt::black, kLine));
  const bool cross = shape + 1 == TraceMarks::kShapes;
  return {cross ? QPolygonF() : path.toFillPolygon(),
          stroker.createStroke(path).simplified().toFillPolygon()};
}

void draw_shape(QPainter* painter, const QPointF& at, std::size_t shape, const QColor& line,
                const QColor& inside) {
  static const std::array<MarkShape, TraceMarks::kShapes> kAll = [] {
    std::array<MarkShape, TraceMarks::kShapes> all;
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = mark_shape(i);
    return all;
  }();
  painter->setPen(Qt::NoPen);
  painter->setBrush(inside);
  painter->drawPolygon(kAll[shape].inside.translated(at));
  painter->setBrush(line);
  painter->drawPolygon(kAll[shape].line.translated(at));
}

}  // namespace

void TraceMarks::draw(QCPPainter* painter, const QPointF& at, std::size_t shape, const QColor& line,
                      const QColor& inside) {
  shape %= kShapes;
  if (painter->modes().testFlag(QCPPainter::pmVectorized))
    return draw_shape(painter, at, shape, line, inside);
  const double scale = painter->deviceTransform().m11();
  // On whole device pixels, so that the stamp stays as sharp as it was drawn.
  const auto whole = [scale](double place) { return std::round(place * scale) / scale; };
  painter->drawImage(QPointF(whole(at.x()) - kStampHalf, whole(at.y()) - kStampHalf),
                     stamp({shape, line.rgba(), inside.rgba(), scale}));
}

const QImage& TraceMarks::stamp(const Look& look) {
  if (const auto known = stamps_.find(look); known != stamps_.end()) return known->second;
  if (stamps_.size() >= kMostStamps) stamps_.clear();
  const auto& [shape, line, inside, scale] = look;
  const auto pixels = static_cast<int>(std::ceil(2 * kStampHalf * scale));
  QImage picture(pixels, pixels, QImage::Format_ARGB32_Premultiplied);
  picture.setDevicePixelRatio(scale);
  picture.fill(Qt::transparent);
  QPainter painter(&picture);
  painter.setRenderHint(QPainter::Antialiasing);
  draw_shape(&painter, QPointF(kStampHalf, kStampHalf), shape, QColor::fromRgba(line),
             QColor::fromRgba(inside));
  painter.end();
  return stamps_.emplace(look, std::move(picture)).first->second;
}

}  // namespace soakwright::gui
