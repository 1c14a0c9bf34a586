// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/pages/position_sketch.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <tuple>
#include <utility>
#include <vector>

#include "app/pdf/chart/chart_traces.h"
#include "app/pdf/chart/chart_view.h"
#include "app/pdf/chart/label_layout.h"
#include "app/pdf/chart/trace_pens.h"

namespace soakwright::pdf {
namespace {

constexpr double kCaption_mm = 4.0;
constexpr double kDot_mm = 0.7;
constexpr double kBar_mm = 1.6;  // of a band along the work

const Channel& channel_of(const Chart& chart, std::size_t trace) {
  return chart.record->channels[chart.traces[trace].channel];
}

/// Traces in use that have a place of the kind asked for.
template <typename HasPlace>
std::vector<std::size_t> placed(const Chart& chart, const HasPlace& has_place) {
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < chart.traces.size(); ++i)
    if (is_drawn(chart.traces[i]) && has_place(channel_of(chart, i))) found.push_back(i);
  return found;
}

std::vector<std::size_t> with_angle(const Chart& chart) {
  return placed(chart, [](const Channel& channel) { return channel.angle_deg.has_value(); });
}

std::vector<std::size_t> with_position(const Chart& chart) {
  return placed(chart, [](const Channel& channel) { return channel.position_m.has_value(); });
}

/// First and last place along the work.
std::pair<double, double> ends_of(const Chart& chart, const std::vector<std::size_t>& traces) {
  std::pair<double, double> ends{*channel_of(chart, traces.front()).position_m,
                                 *channel_of(chart, traces.front()).position_m};
  for (const std::size_t trace : traces) {
    const double at = *channel_of(chart, trace).position_m;
    ends = {std::min(ends.first, at), std::max(ends.second, at)};
  }
  return ends;
}

bool along_the_work(const Chart& chart) {
  const auto traces = with_position(chart);
  if (traces.empty()) return false;
  const auto [first, last] = ends_of(chart, traces);
  return last > first;
}

class Sketch {
 public:
  Sketch(QPainter& painter, const Scale& scale, const Chart& chart, const SketchLook& look)
      : painter_(painter), scale_(scale), chart_(chart), look_(look) {}

  void paint_around(const QRectF& area) {
    caption(area, QStringLiteral("Around the work, seen along its axis; angles as in the job"));
    const QRectF body = area.adjusted(0, scale_.mm(kCaption_mm), 0, 0);
    const double radius = 0.5 * std::min(body.width(), body.height()) - scale_.mm(look_.around_mm);
    const QPointF centre = body.center();
    painter_.setPen(QPen(look_.ink, scale_.mm(0.3)));
    painter_.setBrush(Qt::NoBrush);
    painter_.drawEllipse(centre, radius, radius);
    painter_.setPen(QPen(look_.grid, scale_.mm(0.2)));
    for (const QPointF& way : {QPointF(1, 0), QPointF(0, 1)})
      painter_.drawLine(centre - 0.9 * radius * way, centre + 0.9 * radius * way);
    LabelLayout places(body);
    // 0° is at the top, as on a clock.
    const auto towards = [](double degrees) {
      const double angle = degrees * std::numbers::pi / 180.0;
      return QPointF(std::sin(angle), -std::cos(angle));
    };
    for (const int degrees : {0, 90, 180, 270})
      words(places, centre + 0.72 * radius * towards(degrees), QStringLiteral("%1°").arg(degrees));
    for (const std::size_t trace : with_angle(chart_)) {
      const QPointF way = towards(*channel_of(chart_, trace).angle_deg);
      const QPointF at = centre + radius * way;
      dot(places, at);
      std::vector<QPointF> middles;
      for (const double out : {5.0, 8.5, -5.0, -8.5}) middles.push_back(at + scale_.mm(out) * way);
      number(places, middles, trace);
    }
  }

  void paint_along(const QRectF& area) {
    caption(area, QStringLiteral("Along the work, in m"));
    const QRectF body = area.adjusted(scale_.mm(8.0), scale_.mm(kCaption_mm), -scale_.mm(8.0), 0);
    const auto traces = with_position(chart_);
    double first = 0.0;
    double last = 0.0;
    std::tie(first, last) = ends_of(chart_, traces);
    for (const DrawnBand& band : drawn_bands()) {
      first = std::min(first, band.from_m);
      last = std::max(last, band.to_m);
    }
    // Bands are below the line: it then leaves them room.
    const double y = body.top() + (look_.bands.empty() ? 0.5 : 0.38) * body.height();
    painter_.setPen(QPen(look_.ink, scale_.mm(0.3)));
    painter_.drawLine(QPointF(body.left() - scale_.mm(4.0), y), QPointF(body.right() + scale_.mm(4.0), y));
    LabelLayout places(area);
    std::vector<double> named;
    for (const std::size_t trace : traces) {
      const double metres = *channel_of(chart_, trace).position_m;
      const QPointF at(body.left() + body.width() * (metres - first) / (last - first), y);
      dot(places, at);
      if (std::find(named.begin(), named.end(), metres) == named.end()) {
        named.push_back(metres);
        words(places, at + QPointF(0, scale_.mm(4.0)), QString::number(metres, 'g', 4));
      }
      std::vector<QPointF> middles;
      for (int row = 1; row <= 6; ++row) middles.push_back(at - QPointF(0, scale_.mm(3.4 * row)));
      number(places, middles, trace);
    }
    double below = 8.0;
    for (const DrawnBand& band : drawn_bands()) {
      const auto x = [&](double metres) {
        return body.left() + body.width() * (metres - first) / (last - first);
      };
      const QRectF bar(QPointF(x(band.from_m), y + scale_.mm(below)),
                       QPointF(x(band.to_m), y + scale_.mm(below + kBar_mm)));
      painter_.setPen(QPen(look_.faint_ink, scale_.mm(0.2)));
      painter_.setBrush(band.soak ? QBrush(look_.faint_ink) : QBrush(look_.faint_ink, Qt::BDiagPattern));
      painter_.drawRect(bar);
      places.occupy(bar);
      painter_.setBrush(Qt::NoBrush);
      words(places, QPointF(bar.center().x(), bar.bottom() + scale_.mm(2.0)), band.name);
      below += kBar_mm + 4.0;
    }
  }

 private:
  struct DrawnBand {
    double from_m = 0.0, to_m = 0.0;
    bool soak = true;
    QString name;
  };

  [[nodiscard]] std::vector<DrawnBand> drawn_bands() const {
    std::vector<DrawnBand> drawn;
    for (const BandEntry& band : look_.bands) {
      const QString of_weld =
          band.weld && look_.bands.size() > 1 ? QStringLiteral(", ") + text(*band.weld) : QString();
      const auto add = [&](const std::optional<Thickness>& width, bool soak, const QString& name) {
        if (!width) return;
        const double half_m = 0.5e-3 * width->millimetres();
        drawn.push_back({band.centre_m - half_m, band.centre_m + half_m, soak, name + of_weld});
      };
      add(band.soak_band, true, QStringLiteral("soak band"));
      add(band.heated_band, false, QStringLiteral("heated band"));
    }
    return drawn;
  }

  /// Up to its first comma where there is no room for more.
  void caption(const QRectF& area, const QString& words) {
    const QFont font = scale_.font(kBodyPoints);
    const bool fits = QFontMetricsF(font).horizontalAdvance(words) < area.width();
    painter_.setFont(font);
    painter_.setPen(look_.faint_ink);
    painter_.drawText(area, Qt::AlignLeft | Qt::AlignTop | Qt::TextDontClip,
                      fits ? words : words.section(u',', 0, 0));
  }

  void dot(LabelLayout& places, QPointF at) {
    const double r = scale_.mm(kDot_mm);
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(look_.ink);
    painter_.drawEllipse(at, r, r);
    painter_.setBrush(Qt::NoBrush);
    places.occupy(QRectF(at - QPointF(r, r), QSizeF(2.0 * r, 2.0 * r)));
  }

  void words(LabelLayout& places, QPointF middle, const QString& text) {
    const QFont font = scale_.font(kChartPoints);
    const QFontMetricsF metrics(font);
    QRectF box(0, 0, metrics.horizontalAdvance(text), metrics.height());
    box.moveCenter(middle);
    const auto place = places.place({box});
    if (!place) return;
    painter_.setFont(font);
    painter_.setPen(look_.faint_ink);
    painter_.drawText(*place, Qt::AlignCenter | Qt::TextDontClip, text);
  }

  void number(LabelLayout& places, const std::vector<QPointF>& middles, std::size_t trace) {
    const QString tag = text(chart_.traces[trace].tag);
    std::vector<QRectF> candidates;
    for (const QPointF& middle : middles) {
      QRectF box = number_box(scale_, tag);
      box.moveCenter(middle);
      candidates.push_back(box);
    }
    if (const auto place = places.place(candidates))
      paint_number(painter_, *place, scale_, tag, look_.pens[trace], {look_.ground, look_.ink});
  }

  QPainter& painter_;
  const Scale& scale_;
  const Chart& chart_;
  const SketchLook& look_;
};

}  // namespace

bool has_sketch(const Chart& chart) {
  return chart.record && (!with_angle(chart).empty() || along_the_work(chart));
}

std::vector<std::size_t> traces_on_sketch(const Chart& chart) {
  if (!chart.record) return {};
  const bool along = along_the_work(chart);
  return placed(chart, [along](const Channel& channel) {
    return channel.angle_deg.has_value() || (along && channel.position_m.has_value());
  });
}

void paint_sketch(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart) {
  SketchLook paper;
  paper.pens = trace_pens(chart, scale);
  paint_sketch(painter, area, scale, chart, paper);
}

void paint_sketch(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart,
                  const SketchLook& look) {
  Sketch sketch(painter, scale, chart, look);
  const bool around = !with_angle(chart).empty();
  const bool along = along_the_work(chart);
  const double half = 0.5 * area.width();
  if (around)
    sketch.paint_around(QRectF(area.left(), area.top(), along ? half : area.width(), area.height()));
  if (along)
    sketch.paint_along(
        QRectF(area.left() + (around ? half : 0.0), area.top(), around ? half : area.width(), area.height()));
}

}  // namespace soakwright::pdf
