// SPDX-License-Identifier: GPL-3.0-or-later
// The limits of the procedure that the chart draws as level lines and as edges of ranges: where each is, and
// which key of the procedure it is.
#pragma once

#include <QString>
#include <optional>
#include <string>
#include <vector>

#include "core/report/chart.h"

namespace soakwright::gui {

enum class LimitKey { low, high, above, below, temperature_max, start_temperature_max, end_temperature_max };

struct LimitLine {
  LimitKey key = LimitKey::low;
  std::vector<std::size_t> stages;  ///< by number; none: of the whole record
  double level_c = 0.0;
  double from_s = 0.0, to_s = 0.0;
  std::optional<double> above_c, below_c;  ///< it stays above and below these: the other edge of its range
  TemperatureUnit unit = TemperatureUnit::celsius;  ///< of the procedure: it moves by whole degrees of it
};

std::vector<LimitLine> limit_lines(const Chart& chart, TemperatureUnit of_procedure);
/// The line's key as a procedure file has it.
std::string key_word(LimitKey key);
/// The whole degree of the procedure nearest to `celsius` to which the line can move.
double whole_degree(const LimitLine& line, double celsius);
/// Which limit, and `celsius` in the procedure's unit: "High limit, stage 2: 620 °C".
QString limit_words(const LimitLine& line, double celsius);

/// The line is drawn for this level, for this range.
bool draws(const LimitLine& line, const ChartLevel& level);
bool draws(const LimitLine& line, const ChartRange& range);

}  // namespace soakwright::gui
