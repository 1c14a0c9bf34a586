// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/chart/chart_lanes.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "app/pdf/pages/sign.h"

namespace soakwright::pdf {
namespace {

constexpr double kLane_mm = 4.4;
constexpr double kMarkRow_mm = 3.6;
constexpr std::size_t kMostMarkRows = 7;
constexpr double kSamePlace_mm = 1.6;  // findings that begin and end so close to each other share a sign

struct Lane {
  QString name;
  std::vector<const ChartSegment*> segments;
  std::vector<const ChartNote*> notes;
};

std::vector<Lane> lanes_of(const Chart& chart) {
  std::vector<Lane> lanes;
  std::vector<std::optional<std::string>> welds;
  for (const ChartSegment& stage : chart.stages)
    if (std::find(welds.begin(), welds.end(), stage.weld) == welds.end()) welds.push_back(stage.weld);
  for (const auto& weld : welds) {
    Lane lane{QStringLiteral("required"), {}, {}};
    for (const ChartSegment& stage : chart.stages)
      if (stage.weld == weld) lane.segments.push_back(&stage);
    lanes.push_back(std::move(lane));
  }
  const auto add_segments = [&lanes](const QString& name, const std::vector<ChartSegment>& segments) {
    if (segments.empty()) return;
    Lane lane{name, {}, {}};
    for (const ChartSegment& segment : segments) lane.segments.push_back(&segment);
    lanes.push_back(std::move(lane));
  };
  add_segments(QStringLiteral("recorded"), chart.phases);
  add_segments(QStringLiteral("period"), chart.periods);
  const auto add_notes = [&lanes](const QString& name, const std::vector<ChartNote>& notes) {
    if (notes.empty()) return;
    Lane lane{name, {}, {}};
    for (const ChartNote& note : notes) lane.notes.push_back(&note);
    lanes.push_back(std::move(lane));
  };
  add_notes(QStringLiteral("spares"), chart.takeovers);
  add_notes(QStringLiteral("remarks"), chart.remarks);
  add_notes(QStringLiteral("deviation"), chart.deviations);
  return lanes;
}

QColor segment_colour(ChartSegment::Kind kind) {
  switch (kind) {
    case ChartSegment::Kind::heat:
      return {0xf3, 0xdd, 0xd3};
    case ChartSegment::Kind::hold:
    case ChartSegment::Kind::maintain:
      return {0xd2, 0xe8, 0xdc};
    case ChartSegment::Kind::cool:
      return {0xd6, 0xe2, 0xee};
    case ChartSegment::Kind::period:
      return {0xe6, 0xdc, 0xee};
    case ChartSegment::Kind::idle:
      break;
  }
  return {0xec, 0xec, 0xec};
}

/// The longest of the text's shortenings that fits: all of it, up to the comma, a stage's number or the first
/// word, nothing.
QString fitting(const QString& words, const QFontMetricsF& metrics, double width) {
  const QString short_form = words.section(QLatin1Char(','), 0, 0);
  const int word = short_form.startsWith(QStringLiteral("Stage ")) ? 1 : 0;
  for (const QString& candidate : {words, short_form, short_form.section(QLatin1Char(' '), word, word)})
    if (metrics.horizontalAdvance(candidate) <= width) return candidate;
  return {};
}

bool same_time(const ChartSegment& a, const ChartSegment& b) {
  constexpr double kSame_s = 1.0;
  return std::fabs(a.from_s - b.from_s) < kSame_s && std::fabs(a.to_s - b.to_s) < kSame_s;
}

/// One sign for findings of one kind that begin and end at the same place on the sheet.
struct PlacedMark {
  Finding::Kind kind = Finding::Kind::note;
  std::vector<std::size_t> numbers;  ///< of the events, rising
  double from = 0.0, to = 0.0;       ///< of their time
  std::size_t row = 0;
  double left = 0.0;  ///< of the sign
};

/// "2, 4–8"
QString numbers_text(const std::vector<std::size_t>& numbers) {
  QStringList parts;
  for (std::size_t i = 0; i < numbers.size();) {
    std::size_t last = i;
    while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
    parts << (last < i + 2 ? QString::number(numbers[i])
                           : QStringLiteral("%1–%2").arg(numbers[i]).arg(numbers[last]));
    i = last < i + 2 ? i + 1 : last + 1;
  }
  return parts.join(QStringLiteral(", "));
}

std::vector<PlacedMark> gathered_marks(const Chart& chart, const ChartMap& map, const Scale& scale) {
  std::vector<PlacedMark> gathered;
  const double near = scale.mm(kSamePlace_mm);
  for (const ChartMark& mark : chart.marks) {
    if (!map.shows(mark.from_s, mark.to_s)) continue;
    const double from = map.x_within(mark.from_s);
    const double to = map.x_within(mark.to_s);
    const auto same = std::find_if(gathered.begin(), gathered.end(), [&](const PlacedMark& placed) {
      return placed.kind == mark.kind && std::fabs(placed.from - from) < near &&
             std::fabs(placed.to - to) < near;
    });
    if (same == gathered.end()) {
      gathered.push_back({mark.kind, {mark.event}, from, to, 0, from});
      continue;
    }
    const auto place = std::lower_bound(same->numbers.begin(), same->numbers.end(), mark.event);
    if (place == same->numbers.end() || *place != mark.event) same->numbers.insert(place, mark.event);
    same->from = std::min(same->from, from);
    same->to = std::max(same->to, to);
  }
  return gathered;
}

struct MarkRows {
  std::vector<PlacedMark> marks;
  std::size_t rows = 0;
  std::size_t left_over = 0;
};

MarkRows place_marks(const Chart& chart, const ChartMap& map, const Scale& scale) {
  MarkRows result;
  const QFontMetricsF metrics(scale.font(kChartPoints, true));
  std::vector<double> row_ends;
  for (PlacedMark& mark : gathered_marks(chart, map, scale)) {
    const double sign = scale.mm(3.0) + metrics.horizontalAdvance(numbers_text(mark.numbers)) + scale.mm(1.0);
    double left = mark.from;
    double right = std::max(mark.to, left + sign);
    if (right > map.plot().right()) {
      left = std::min(left, map.plot().right() - sign);
      right = map.plot().right();
    }
    auto row = static_cast<std::size_t>(
        std::find_if(row_ends.begin(), row_ends.end(), [left](double end) { return end <= left; }) -
        row_ends.begin());
    if (row == row_ends.size()) {
      if (row == kMostMarkRows) {
        result.left_over += mark.numbers.size();
        continue;
      }
      row_ends.push_back(0.0);
    }
    row_ends[row] = right + scale.mm(0.6);
    mark.row = row;
    mark.left = left;
    result.marks.push_back(std::move(mark));
  }
  result.rows = row_ends.size();
  return result;
}

}  // namespace

double findings_height(const Chart& chart, const ChartMap& map, const Scale& scale) {
  const MarkRows rows = place_marks(chart, map, scale);
  if (rows.rows == 0) return 0.0;
  return scale.mm(kMarkRow_mm) * static_cast<double>(rows.rows + (rows.left_over > 0 ? 1 : 0)) +
         scale.mm(0.8);
}

double lanes_height(const Chart& chart, const Scale& scale) {
  return scale.mm(kLane_mm) * static_cast<double>(lanes_of(chart).size());
}

void paint_findings(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart) {
  const MarkRows rows = place_marks(chart, map, scale);
  const QFont font = scale.font(kChartPoints, true);
  painter.setFont(font);
  const double row_height = scale.mm(kMarkRow_mm);
  const auto row_middle = [&](const PlacedMark& placed) {
    return map.plot().top() - scale.mm(0.8) - row_height * (static_cast<double>(placed.row) + 0.5);
  };
  for (const PlacedMark& placed : rows.marks) {
    const Sign sign = sign_of(placed.kind);
    const double low = row_middle(placed) + 0.36 * row_height;
    painter.setPen(QPen(colour_of(sign), scale.mm(0.3)));
    painter.drawLine(QPointF(placed.from, low),
                     QPointF(std::max(placed.to, placed.from + scale.mm(0.3)), low));
    if (sign == Sign::note) continue;
    QPen hair(colour_of(sign).lighter(150), scale.mm(0.09));
    hair.setDashPattern({4.0, 6.0});
    painter.setPen(hair);
    for (const double x : {placed.from, placed.to})
      painter.drawLine(QPointF(x, low), QPointF(x, map.plot().bottom()));
  }
  // Signs and numbers last, on white, so that no line of another finding runs through them.
  const QFontMetricsF metrics(font);
  for (const PlacedMark& placed : rows.marks) {
    const double y = row_middle(placed) - scale.mm(0.3);
    const QString numbers = numbers_text(placed.numbers);
    const QRectF box(placed.left + scale.mm(3.0), y - 0.4 * row_height, metrics.horizontalAdvance(numbers),
                     0.8 * row_height);
    painter.fillRect(box.adjusted(-scale.mm(2.9), 0, scale.mm(0.4), -scale.mm(0.1)), colour::kPdf);
    draw_sign(painter, {placed.left + scale.mm(1.4), y}, scale.mm(1.1), sign_of(placed.kind));
    painter.setPen(colour::kInk);
    painter.drawText(box, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextDontClip, numbers);
  }
  if (rows.left_over > 0) {
    const double y = map.plot().top() - scale.mm(0.8) - row_height * static_cast<double>(rows.rows + 1);
    painter.setFont(scale.font(kChartPoints));
    painter.setPen(colour::kFaintInk);
    painter.drawText(QRectF(map.plot().left(), y, map.plot().width(), row_height),
                     Qt::AlignLeft | Qt::AlignVCenter,
                     QStringLiteral("and %1 more events, all in the list").arg(rows.left_over));
  }
}

void paint_lanes(QPainter& painter, const ChartMap& map, const Scale& scale, const Chart& chart,
                 double names) {
  const QFont font = scale.font(kChartPoints);
  const QFontMetricsF metrics(font);
  painter.setFont(font);
  const double height = scale.mm(kLane_mm);
  const double pad = scale.mm(0.8);
  double y = map.plot().bottom();
  for (const Lane& lane : lanes_of(chart)) {
    painter.setPen(colour::kFaintInk);
    painter.drawText(QRectF(map.plot().left() - names, y, names - scale.mm(1.2), height),
                     Qt::AlignRight | Qt::AlignVCenter, lane.name);
    for (std::size_t i = 0; i < lane.segments.size();) {
      const ChartSegment* segment = lane.segments[i];
      QStringList said{text(segment->text)};
      // A cool stage and a heat stage between the same two holds cover one time.
      for (++i; i < lane.segments.size() && same_time(*lane.segments[i], *segment); ++i)
        said << text(lane.segments[i]->text);
      if (!map.shows(segment->from_s, segment->to_s)) continue;
      const QRectF box(QPointF(map.x_within(segment->from_s), y),
                       QPointF(map.x_within(segment->to_s), y + height));
      painter.fillRect(box, segment_colour(segment->kind));
      painter.setPen(QPen(colour::kFaintInk, scale.mm(0.12)));
      painter.drawRect(box);
      const QString words = fitting(said.join(QStringLiteral(" / ")), metrics, box.width() - 2.0 * pad);
      painter.setPen(colour::kInk);
      painter.drawText(box.adjusted(pad, 0, -pad, 0), Qt::AlignLeft | Qt::AlignVCenter, words);
    }
    double written_to = map.plot().left();
    for (const ChartNote* note : lane.notes) {
      if (!map.shows(note->at_s, note->at_s)) continue;
      const double x = map.x_within(note->at_s);
      QPen pen(colour::kInk, scale.mm(0.15));
      pen.setDashPattern({1.0, 2.0});
      painter.setPen(pen);
      painter.drawLine(QPointF(x, map.plot().top()), QPointF(x, y + height));
      const double room = map.plot().right() - x - 2.0 * pad;
      const bool left_side =
          metrics.horizontalAdvance(text(note->text)) > room && x - map.plot().left() > room;
      const double width = left_side ? x - written_to - 2.0 * pad : room;
      if (!left_side && x < written_to) continue;  // the table of remarks has it
      const QString words = fitting(text(note->text), metrics, width);
      const QRectF box(left_side ? x - pad - width : x + pad, y, width, height);
      painter.setPen(colour::kInk);
      painter.drawText(box, (left_side ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter, words);
      written_to = left_side ? x : x + 2.0 * pad + metrics.horizontalAdvance(words);
    }
    painter.setPen(QPen(colour::kFaintInk, scale.mm(0.12)));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(map.plot().left(), y, map.plot().width(), height));
    y += height;
  }
}

}  // namespace soakwright::pdf
