// SPDX-License-Identifier: GPL-3.0-or-later
// What the record holds at the pointer: the row nearest to it, each channel there, the hottest and the
// coldest, and each channel's rate and its difference from the channel of reference.
#pragma once

#include <QString>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/report/chart.h"
#include "core/report/chart_curves.h"
#include "core/units/temperature.h"

namespace soakwright::gui {

struct PointerReading {
  std::size_t row = 0;
  QString moment;
  std::vector<std::optional<double>> celsius;   ///< by channel of the record
  std::optional<std::size_t> hottest, coldest;  ///< channel, among the evaluated ones that are shown
  TemperatureDifference spread;                 ///< between the two
  /// By channel of the record; empty where they are not worked out.
  std::vector<std::optional<HeatingRate>> rates;
  std::vector<std::optional<TemperatureDifference>> differences;
};

/// `curves` are of the same record, or null.
PointerReading reading_at(const Chart& chart, const ChartCurves* curves, const std::vector<bool>& visible,
                          double at_s);

}  // namespace soakwright::gui
