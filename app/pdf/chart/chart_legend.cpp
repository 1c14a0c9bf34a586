// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/chart/chart_legend.h"

#include <QPainter>
#include <algorithm>
#include <functional>

#include "app/pdf/chart/chart_traces.h"
#include "app/pdf/chart/chart_view.h"
#include "app/pdf/chart/trace_pens.h"
#include "app/pdf/pages/sign.h"
#include "app/pdf/text_block.h"

namespace soakwright::pdf {
namespace {

constexpr double kSample_mm = 11.0;
constexpr double kNumber_mm = 5.0;
constexpr double kGap_mm = 4.0;

struct Entry {
  std::size_t trace = 0;
  TextBlock words;
};

struct Grid {
  std::vector<Entry> entries;
  std::size_t columns = 1;
  double column_width = 0.0;
  double row_height = 0.0;
  [[nodiscard]] std::size_t rows() const { return (entries.size() + columns - 1) / columns; }
};

Grid grid_of(const Chart& chart, const Scale& scale, double width) {
  const QFont font = scale.font(kChartPoints);
  const double before = scale.mm(kSample_mm + kNumber_mm);
  double natural = 0.0;
  std::vector<std::size_t> shown;
  for (std::size_t i = 0; i < chart.traces.size(); ++i) {
    if (!is_drawn(chart.traces[i])) continue;
    shown.push_back(i);
    natural = std::max(natural, TextBlock::natural_width(text(chart.traces[i].legend), font));
  }
  Grid grid;
  if (shown.empty()) return grid;
  const double wanted = before + natural + scale.mm(kGap_mm);
  const double most = static_cast<double>(std::min<std::size_t>(6, shown.size()));
  // Names wrap rather than push the legend into one endless column.
  const double least = std::min(most, shown.size() > 4 ? 3.0 : 1.0);
  grid.columns = static_cast<std::size_t>(std::clamp(width / wanted, least, most));
  grid.column_width = width / static_cast<double>(grid.columns);
  grid.row_height = scale.mm(3.2);
  for (const std::size_t trace : shown) {
    grid.entries.push_back({trace, TextBlock(text(chart.traces[trace].legend), font,
                                             grid.column_width - before - scale.mm(kGap_mm))});
    grid.row_height = std::max(grid.row_height, grid.entries.back().words.height() + scale.mm(0.4));
  }
  return grid;
}

/// The second part: signs of findings, lines of ranges and maximum temperatures; only those that the chart
/// has.
struct Sample {
  QString words;
  std::function<void(QPainter&, const QRectF&)> paint;
};

std::vector<Sample> samples_of(const Chart& chart, const Scale& scale) {
  std::vector<Sample> samples;
  const auto any_mark = [&chart](Finding::Kind kind) {
    return std::any_of(chart.marks.begin(), chart.marks.end(),
                       [kind](const ChartMark& mark) { return mark.kind == kind; });
  };
  const auto add_sign = [&](Finding::Kind kind, const char* words) {
    if (any_mark(kind))
      samples.push_back({QString::fromUtf8(words), [=](QPainter& painter, const QRectF& box) {
                           draw_sign(painter, box.center(), 0.42 * box.height(), sign_of(kind));
                         }});
  };
  add_sign(Finding::Kind::not_met, "finding: not met");
  add_sign(Finding::Kind::inconclusive, "finding: inconclusive");
  add_sign(Finding::Kind::note, "finding: note");
  if (!chart.ranges.empty())
    samples.push_back(
        {QStringLiteral("holding temperature range"), [=](QPainter& painter, const QRectF& box) {
           painter.fillRect(box, colour::kRange);
           painter.setPen(QPen(colour::kRangeEdge, scale.mm(0.25)));
           painter.drawLine(box.topLeft(), box.topRight());
           painter.drawLine(box.bottomLeft(), box.bottomRight());
         }});
  const bool temperature_max =
      std::any_of(chart.levels.begin(), chart.levels.end(),
                  [](const ChartLevel& level) { return level.kind == ChartLevel::Kind::temperature_max; });
  if (temperature_max)
    samples.push_back({QStringLiteral("maximum temperature"), [=](QPainter& painter, const QRectF& box) {
                         QPen pen(colour::kNotMet, scale.mm(0.35));
                         pen.setDashPattern({14.0, 4.0});
                         painter.setPen(pen);
                         painter.drawLine(QPointF(box.left(), box.center().y()),
                                          QPointF(box.right(), box.center().y()));
                       }});
  if (!chart.exclusions.empty())
    samples.push_back({QStringLiteral("excluded"), [=](QPainter& painter, const QRectF& box) {
                         painter.setPen(exclusion_pen(scale));
                         painter.drawLine(QPointF(box.left(), box.center().y()),
                                          QPointF(box.right(), box.center().y()));
                       }});
  return samples;
}

}  // namespace

double legend_height(const Chart& chart, const Scale& scale, double width, bool signs) {
  const Grid grid = grid_of(chart, scale, width);
  const double samples = !signs || samples_of(chart, scale).empty() ? 0.0 : scale.mm(4.2);
  return grid.row_height * static_cast<double>(grid.rows()) + samples;
}

void paint_legend(QPainter& painter, const QRectF& area, const Scale& scale, const Chart& chart, bool signs) {
  const Grid grid = grid_of(chart, scale, area.width());
  const std::vector<QPen> pens = trace_pens(chart, scale);
  const std::size_t rows = grid.rows();
  for (std::size_t i = 0; i < grid.entries.size(); ++i) {
    // Down the columns, as the numbers run.
    const std::size_t column = i / rows;
    const std::size_t row = i % rows;
    const double x = area.left() + grid.column_width * static_cast<double>(column);
    const double y = area.top() + grid.row_height * static_cast<double>(row);
    const Entry& entry = grid.entries[i];
    const double middle = y + 0.5 * entry.words.line_height();
    painter.setPen(pens[entry.trace]);
    painter.drawLine(QPointF(x, middle), QPointF(x + scale.mm(kSample_mm - 1.0), middle));
    const QString number = text(chart.traces[entry.trace].tag);
    QRectF box = number_box(scale, number);
    box.moveTo(x + scale.mm(kSample_mm), middle - 0.5 * box.height());
    paint_number(painter, box, scale, number, pens[entry.trace]);
    painter.setPen(colour::kInk);
    entry.words.draw(painter, {x + scale.mm(kSample_mm + kNumber_mm), y});
  }
  if (!signs) return;
  double x = area.left();
  const double y = area.top() + grid.row_height * static_cast<double>(rows) + scale.mm(1.2);
  const QFont font = scale.font(kChartPoints);
  for (const Sample& sample : samples_of(chart, scale)) {
    painter.save();
    sample.paint(painter, QRectF(x, y + scale.mm(0.2), scale.mm(8.0), scale.mm(2.4)));
    painter.restore();
    const TextBlock words(sample.words, font, area.width());
    painter.setPen(colour::kInk);
    words.draw(painter, {x + scale.mm(9.5), y});
    x += scale.mm(9.5 + 2.0 * kGap_mm) + words.width();
  }
}

}  // namespace soakwright::pdf
