// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/pointer_reading.h"

#include <algorithm>

#include "app/gui/texts/reading_text.h"

namespace soakwright::gui {

PointerReading reading_at(const Chart& chart, const ChartCurves* curves, const std::vector<bool>& visible,
                          double at_s) {
  PointerReading reading;
  const Record& record = *chart.record;
  const std::vector<double>& times = record.times_s;
  const auto later = std::lower_bound(times.begin(), times.end(), at_s);
  auto row = std::min<std::ptrdiff_t>(later - times.begin(), static_cast<std::ptrdiff_t>(times.size()) - 1);
  if (row > 0 &&
      at_s - times[static_cast<std::size_t>(row - 1)] < times[static_cast<std::size_t>(row)] - at_s)
    --row;
  reading.row = static_cast<std::size_t>(row);
  reading.moment = moment_text(record, times[reading.row]);
  for (std::size_t i = 0; i < record.channels.size(); ++i) {
    const auto celsius = record.channels[i].readings.celsius(reading.row);
    reading.celsius.push_back(celsius);
    if (!celsius || !record.channels[i].evaluated() || i >= visible.size() || !visible[i]) continue;
    if (!reading.hottest || *celsius > *reading.celsius[*reading.hottest]) reading.hottest = i;
    if (!reading.coldest || *celsius < *reading.celsius[*reading.coldest]) reading.coldest = i;
  }
  if (reading.hottest && reading.coldest) {
    const Readings& hottest = record.channels[*reading.hottest].readings;
    const Readings& coldest = record.channels[*reading.coldest].readings;
    reading.spread =
        TemperatureDifference::of_kelvin(Readings::difference_k(hottest, reading.row, coldest, reading.row));
  }
  if (!curves) return reading;
  for (const Readings& rate : curves->rates) {
    const auto value = reading.row < rate.rows() ? rate.celsius(reading.row) : std::nullopt;
    reading.rates.push_back(value ? std::optional(HeatingRate::of_celsius_per_hour(*value)) : std::nullopt);
  }
  for (const Readings& difference : curves->differences) {
    const auto value = reading.row < difference.rows() ? difference.celsius(reading.row) : std::nullopt;
    reading.differences.push_back(value ? std::optional(TemperatureDifference::of_kelvin(*value))
                                        : std::nullopt);
  }
  return reading;
}

}  // namespace soakwright::gui
