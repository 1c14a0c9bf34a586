// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/chart_labels.h"

#include <QLineF>
#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "app/gui/chart/chart_layers.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr double kBesidePoint = 9.0;
constexpr int kLinesFromPoint = 8;  ///< so far a point's words may be moved
constexpr double kBesideRamp = 8.0;
constexpr double kBesideNote = 3.0;
constexpr double kBelowTop = 4.0;                        ///< notes begin below the brackets of findings
constexpr std::array kBesideEnd{4.0, 16.0, 32.0, 64.0};  ///< from the end of a range: a trace leaves it there
constexpr std::array kShares{0.5, 0.3, 0.7, 0.15, 0.85};  ///< of a line in view: where its words may stand

using Kind = ChartLabel::Kind;

class Placing {
 public:
  Placing(const ChartScene& scene, const PixelMap& map, const QFontMetricsF& metrics)
      : scene_(scene), map_(map), metrics_(metrics), inside_(QRectF(map.rect).adjusted(-1, -1, 1, 1)) {}

  void place_points();
  void place_ramp(const RequiredRamp& ramp);
  void place_hold(const RequiredHold& hold);
  /// At a line of the temperature, which begins at the moment; also beside its end where that is given.
  void place_at_line(Kind kind, double at_s, double celsius, const std::string& said,
                     std::optional<double> end_s = std::nullopt);
  /// Beside the line of its moment, as high as it can.
  void place_note(const ChartNote& note);

  std::vector<ChartLabel> labels;

 private:
  [[nodiscard]] bool free(const QRectF& box) const {
    return inside_.contains(box) && std::none_of(labels.begin(), labels.end(), [&box](const ChartLabel& one) {
             return one.box.intersects(box);
           });
  }
  /// Whether a shown trace, a level or an edge of a range runs through the box.
  [[nodiscard]] bool crossed(const QRectF& box) const;
  [[nodiscard]] bool beside_other_note(const QRectF& box, const ChartNote& own) const;
  /// In the first of the boxes that is free and that nothing crosses, else in the first that is free.
  bool put_in_one(Kind kind, const QString& text, std::span<const QRectF> boxes);
  bool put(Kind kind, const QString& text, const QRectF& box, std::size_t point = 0) {
    if (!free(box)) return false;
    labels.push_back({kind, text, box, point});
    return true;
  }
  [[nodiscard]] QRectF box_of(const QString& text, const QPointF& middle) const {
    QRectF box(0, 0, metrics_.horizontalAdvance(text) + 6.0, metrics_.height());
    box.moveCenter(middle);
    return box;
  }
  [[nodiscard]] QString limit_of(std::size_t requirement) const {
    for (const RequirementRow& row : scene_.report->requirements)
      if (row.requirement == requirement) return pdf::shown_text(row.limit);
    return {};
  }

  const ChartScene& scene_;
  const PixelMap& map_;
  const QFontMetricsF& metrics_;
  QRectF inside_;
  std::vector<std::pair<QString, double>> named_;  ///< once each: several stages often share a level
};

bool Placing::crossed(const QRectF& box) const {
  if (!scene_.traces) return false;
  const auto& times_s = scene_.traces->record->times_s;
  const double from_s = map_.from_s + (box.left() - map_.left) / map_.pixels_per_s;
  const double to_s = map_.from_s + (box.right() - map_.left) / map_.pixels_per_s;
  const double low_c = map_.low_c + (map_.bottom - box.bottom()) / map_.pixels_per_c;
  const double high_c = map_.low_c + (map_.bottom - box.top()) / map_.pixels_per_c;
  const auto line_within = [&](double celsius, double begin_s, double end_s) {
    return celsius >= low_c && celsius <= high_c && begin_s <= to_s && end_s >= from_s;
  };
  for (const ChartLevel& level : scene_.levels())
    if (line_within(level.level_c, level.from_s, level.to_s)) return true;
  for (const ChartRange& range : scene_.ranges())
    if (line_within(range.low_c, range.from_s, range.to_s) ||
        (range.high_c && line_within(*range.high_c, range.from_s, range.to_s)))
      return true;
  // With the readings on either side: a line leads to them.
  auto first = std::lower_bound(times_s.begin(), times_s.end(), from_s);
  auto last = std::upper_bound(first, times_s.end(), to_s);
  if (first != times_s.begin()) --first;
  if (last != times_s.end()) ++last;
  const auto& traces = scene_.chart()->traces;
  for (std::size_t i = 0; i < traces.size(); ++i) {
    if (!scene_.shows(i)) continue;
    const TracePyramid::Extremes within = scene_.traces->channels[traces[i].channel].extremes(
        static_cast<std::size_t>(first - times_s.begin()), static_cast<std::size_t>(last - times_s.begin()));
    if (static_cast<double>(within.lowest) <= high_c && static_cast<double>(within.highest) >= low_c)
      return true;
  }
  return false;
}

bool Placing::put_in_one(Kind kind, const QString& text, std::span<const QRectF> boxes) {
  for (const QRectF& box : boxes)
    if (free(box) && !crossed(box)) return put(kind, text, box);
  return std::any_of(boxes.begin(), boxes.end(), [&](const QRectF& box) { return put(kind, text, box); });
}

/// Words there would be taken for those of the other.
bool Placing::beside_other_note(const QRectF& box, const ChartNote& own) const {
  const Chart& chart = *scene_.chart();
  for (const auto* notes : {&chart.remarks, &chart.takeovers, &chart.deviations})
    for (const ChartNote& note : *notes)
      if (note.at_s != own.at_s && map_.x(note.at_s) >= box.left() - 2.0 * kBesideNote &&
          map_.x(note.at_s) <= box.right() + 2.0 * kBesideNote)
        return true;
  return false;
}

/// Above the point to its right, else to its left, else below; then further away.
void Placing::place_points() {
  const std::vector<const ChartPoint*> points = evidence_points(*scene_.evidence);
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (points[i]->text.empty()) continue;
    const QString text = pdf::shown_text(points[i]->text);
    const QPointF at(map_.x(points[i]->at_s), map_.y(points[i]->level_c));
    const QSizeF size(metrics_.horizontalAdvance(text) + 8.0, metrics_.height() + 2.0);
    const std::array lefts{at.x() + kBesidePoint, at.x() - kBesidePoint - size.width()};
    bool placed = !inside_.contains(at);
    for (int line = 0; line < kLinesFromPoint && !placed; ++line) {
      const double away = line * size.height();
      for (const double top : {at.y() - size.height() - 1.0 - away, at.y() + 5.0 + away})
        for (const double left : lefts)
          placed = placed || put(Kind::point, text, QRectF(QPointF(left, top), size), i);
    }
  }
}

/// Along what is in view of it, on the side that is not permitted.
void Placing::place_ramp(const RequiredRamp& ramp) {
  const QPointF from(map_.x(ramp.from_s), map_.y(ramp.from_c));
  const QPointF to(map_.x(ramp.to_s), map_.y(ramp.to_c));
  const double left = std::max(from.x(), static_cast<double>(map_.rect.left()));
  const double right = std::min(to.x(), static_cast<double>(map_.rect.right()));
  if (right <= left || to.x() <= from.x()) return;
  const QString words = limit_of(ramp.requirement);
  const double aside = 0.5 * metrics_.horizontalAdvance(words) + kBesideRamp;
  std::vector<QRectF> boxes;
  boxes.reserve(kShares.size());
  for (const double share : kShares) {
    const double x = left + share * (right - left);
    const QPointF at = QLineF(from, to).pointAt((x - from.x()) / (to.x() - from.x()));
    boxes.push_back(box_of(words, at - QPointF(aside, 0.0)));
  }
  put_in_one(Kind::required, words, boxes);
}

void Placing::place_hold(const RequiredHold& hold) {
  const double left = std::max(map_.x(hold.from_s), static_cast<double>(map_.rect.left()));
  const double right = std::min(map_.x(hold.to_s), static_cast<double>(map_.rect.right()));
  const QString words = limit_of(hold.requirement);
  if (right - left < metrics_.horizontalAdvance(words)) return;
  const double y = required_hold_y(map_, hold) + 0.5 * metrics_.height() + 1.0;
  std::vector<QRectF> boxes;
  for (const double below : {0.0, 1.0, 2.0})
    for (const double share : kShares)
      boxes.push_back(box_of(words, QPointF(left + share * (right - left), y + below * metrics_.height())));
  put_in_one(Kind::required, words, boxes);
}

void Placing::place_at_line(Kind kind, double at_s, double celsius, const std::string& said,
                            std::optional<double> end_s) {
  const QString text = pdf::shown_text(said);
  const double width = metrics_.horizontalAdvance(text) + 6.0;
  const double right = map_.rect.right() - width;
  const double first = std::clamp(map_.x(at_s) + 3.0, map_.left + 3.0, std::max(map_.left + 3.0, right));
  const double height = metrics_.height();
  if (said.empty() || map_.x(at_s) > map_.rect.right() || map_.y(celsius) < map_.rect.top() - 1.0 ||
      map_.y(celsius) > map_.rect.bottom() + height)
    return;
  if (std::find(named_.begin(), named_.end(), std::pair{text, celsius}) != named_.end()) return;
  named_.emplace_back(text, celsius);
  const double above = map_.y(celsius) - 2.0 - height;
  const double below = map_.y(celsius) + 2.0;
  std::vector<QRectF> boxes{QRectF(first, above, width, height)};
  if (end_s)
    for (const double aside : kBesideEnd)
      for (const double top : {map_.y(celsius) - 0.5 * height, below})
        boxes.emplace_back(map_.x(*end_s) + aside, top, width, height);
  // Below, or further along.
  for (const double x : {first, std::min(right, first + 0.33 * map_.rect.width()), right})
    for (const double top : {above, below}) boxes.emplace_back(x, top, width, height);
  put_in_one(kind, text, boxes);
}

void Placing::place_note(const ChartNote& note) {
  const double line = map_.x(note.at_s);
  if (note.text.empty() || line < map_.rect.left() || line > map_.rect.right()) return;
  const QString text = pdf::shown_text(note.text);
  const QSizeF size(metrics_.horizontalAdvance(text) + 6.0, metrics_.height());
  const std::array lefts{line + kBesideNote, line - kBesideNote - size.width()};
  const double top = map_.rect.top() + kBelowTop;
  std::vector<QRectF> boxes;
  for (double y = top; y + size.height() <= map_.rect.bottom(); y += 0.5 * size.height())
    for (const double left : lefts)
      if (const QRectF box(QPointF(left, y), size); !beside_other_note(box, note)) boxes.push_back(box);
  // Too long for either side: wherever there is room at the top.
  const double right = map_.rect.right() - size.width();
  boxes.emplace_back(QPointF(std::clamp(lefts[0], map_.left, std::max(map_.left, right)), top), size);
  put_in_one(Kind::note, text, boxes);
}

}  // namespace

std::vector<const ChartPoint*> evidence_points(const Evidence& evidence) {
  std::vector<const ChartPoint*> points;
  if (evidence.fit) points = {&evidence.fit->first, &evidence.fit->second};
  for (const ChartPoint& point : evidence.points) points.push_back(&point);
  return points;
}

std::vector<ChartLabel> chart_labels(const ChartScene& scene, const PixelMap& map,
                                     const QFontMetricsF& metrics) {
  const Chart* chart = scene.chart();
  if (!chart) return {};
  Placing placing(scene, map, metrics);
  if (scene.evidence) placing.place_points();
  if (scene.shows_required && scene.required) {
    for (const RequiredHold& hold : scene.required->holds) placing.place_hold(hold);
    for (const RequiredRamp& ramp : scene.required->ramps) placing.place_ramp(ramp);
  }
  for (const ChartLevel& level : scene.levels())
    placing.place_at_line(level.kind == ChartLevel::Kind::temperature_max ? Kind::maximum : Kind::level,
                          level.from_s, level.level_c, level.text);
  // What people noted and where spares took over.
  for (const auto* notes : {&chart->remarks, &chart->takeovers, &chart->deviations})
    for (const ChartNote& note : *notes) placing.place_note(note);
  // These can stand in several places, notes beside their line only.
  for (const ChartRange& range : scene.ranges())
    placing.place_at_line(Kind::range, range.from_s, range.high_c.value_or(range.low_c), range.text,
                          range.to_s);
  return std::move(placing.labels);
}

}  // namespace soakwright::gui
