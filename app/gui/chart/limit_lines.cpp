// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/limit_lines.h"

#include <QStringList>
#include <algorithm>
#include <cmath>

#include "app/gui/texts/window_text.h"

namespace soakwright::gui {
namespace {

LimitKey key_of(ChartLevel::Kind kind) {
  switch (kind) {
    case ChartLevel::Kind::temperature_max:
      return LimitKey::temperature_max;
    case ChartLevel::Kind::start_temperature_max:
      return LimitKey::start_temperature_max;
    case ChartLevel::Kind::end_temperature_max:
      return LimitKey::end_temperature_max;
    case ChartLevel::Kind::evaluated_above:
      return LimitKey::above;
    case ChartLevel::Kind::evaluated_below:
      return LimitKey::below;
  }
  return LimitKey::temperature_max;
}

QString name_of(LimitKey key) {
  switch (key) {
    case LimitKey::low:
      return tr("Low limit");
    case LimitKey::high:
      return tr("High limit");
    case LimitKey::above:
      return tr("Evaluated above");
    case LimitKey::below:
      return tr("Evaluated below");
    case LimitKey::temperature_max:
      return tr("Maximum temperature");
    case LimitKey::start_temperature_max:
      return tr("Temperature at start, at most");
    case LimitKey::end_temperature_max:
      return tr("Temperature at end, at most");
  }
  return {};
}

}  // namespace

std::vector<LimitLine> limit_lines(const Chart& chart, TemperatureUnit of_procedure) {
  std::vector<LimitLine> lines;
  for (const ChartRange& range : chart.ranges) {
    LimitLine low{LimitKey::low, {range.stage}, range.low_c, range.from_s, range.to_s, {},
                  range.high_c,  of_procedure};
    lines.push_back(low);
    if (range.high_c)
      lines.push_back({LimitKey::high,
                       {range.stage},
                       *range.high_c,
                       range.from_s,
                       range.to_s,
                       range.low_c,
                       {},
                       of_procedure});
  }
  for (const ChartLevel& level : chart.levels)
    lines.push_back(
        {key_of(level.kind), level.stages, level.level_c, level.from_s, level.to_s, {}, {}, of_procedure});
  return lines;
}

std::string key_word(LimitKey key) {
  switch (key) {
    case LimitKey::low:
      return "low";
    case LimitKey::high:
      return "high";
    case LimitKey::above:
      return "above";
    case LimitKey::below:
      return "below";
    case LimitKey::temperature_max:
      return "temperature_max";
    case LimitKey::start_temperature_max:
      return "start_temperature_max";
    case LimitKey::end_temperature_max:
      return "end_temperature_max";
  }
  return {};
}

double whole_degree(const LimitLine& line, double celsius) {
  const auto in_unit = [&](double one) { return Temperature::of_celsius(one).in(line.unit); };
  double degrees = std::round(in_unit(celsius));
  if (line.below_c) degrees = std::min(degrees, std::ceil(in_unit(*line.below_c)) - 1.0);
  if (line.above_c) degrees = std::max(degrees, std::floor(in_unit(*line.above_c)) + 1.0);
  return Temperature::of(degrees, line.unit).celsius();
}

QString limit_words(const LimitLine& line, double celsius) {
  const QString value = QStringLiteral("%1 °%2").arg(
      QString::number(Temperature::of_celsius(celsius).in(line.unit), 'g', 6),
      line.unit == TemperatureUnit::fahrenheit ? QStringLiteral("F") : QStringLiteral("C"));
  if (line.stages.empty()) return tr("%1: %2").arg(name_of(line.key), value);
  QStringList stages;
  for (const std::size_t stage : line.stages) stages.append(QString::number(stage));
  return (stages.size() == 1 ? tr("%1, stage %2: %3") : tr("%1, stages %2: %3"))
      .arg(name_of(line.key), stages.join(QStringLiteral(", ")), value);
}

bool draws(const LimitLine& line, const ChartLevel& level) {
  return line.key == key_of(level.kind) && line.stages == level.stages && line.level_c == level.level_c;
}

bool draws(const LimitLine& line, const ChartRange& range) {
  return (line.key == LimitKey::low || line.key == LimitKey::high) && line.stages.front() == range.stage;
}

}  // namespace soakwright::gui
