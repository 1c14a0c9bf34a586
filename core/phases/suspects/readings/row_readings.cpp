// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/readings/row_readings.h"

#include <algorithm>
#include <cmath>
#include <new>

#include "core/system/parallel_for.h"

namespace soakwright {

namespace {

constexpr std::int32_t kPartsOfDigit = 16;  // a corrected reading does not lie on the log's digits
constexpr double kFinestK = 1e-5;           // that a 32-bit number still holds
constexpr double kGapIntervals = 1.5;

/// equal_runs() where no reading is missing: a run meets one of every `least` rows, and few others are looked
/// at.
std::vector<RowRun> complete_runs(std::span<const std::int32_t> units, std::size_t least) {
  std::vector<RowRun> runs;
  for (std::size_t look = least - 1; look < units.size();) {
    std::size_t first = look;
    std::size_t last = look;
    while (first > 0 && units[first - 1] == units[look]) --first;
    while (last + 1 < units.size() && units[last + 1] == units[look]) ++last;
    if (last - first + 1 >= least) runs.push_back({first, last, last - first + 1});
    look = last + least;
  }
  return runs;
}

}  // namespace

RowReadings row_readings(const Record& record, const Readings& readings, std::span<std::int32_t> room) {
  RowReadings channel;
  channel.units = room;
  if (readings.decimals() != nullptr) {
    channel.kelvin_per_unit = readings.decimals()->kelvin_per_unit();
    readings.visit_units(
        record.first_row, record.end_row, [&](std::size_t row, const std::int32_t* units, std::size_t count) {
          std::copy_n(units, count, room.begin() + static_cast<std::ptrdiff_t>(row - record.first_row));
        });
    return channel;
  }
  channel.kelvin_per_unit = std::max(readings.resolution_k() / kPartsOfDigit, kFinestK);
  channel.digit = std::max<std::int32_t>(
      1, static_cast<std::int32_t>(std::lround(readings.resolution_k() / channel.kelvin_per_unit)));
  for (std::size_t row = 0; row < room.size(); ++row) {
    const auto celsius = readings.celsius(record.first_row + row);
    room[row] = celsius ? static_cast<std::int32_t>(std::lround(*celsius / channel.kelvin_per_unit))
                        : Readings::kMissingUnits;
  }
  return channel;
}

RowTable row_table(const Record& record, const SampledRecord& sampled) {
  RowTable table;
  table.record = &record;
  table.channels.resize(sampled.channels.size());
  const std::size_t rows = record.end_row - record.first_row;
  table.storage = PageArena(sampled.channels.size() * rows * sizeof(std::int32_t), PageArena::Content::any);
  auto* const columns = static_cast<std::int32_t*>(table.storage.data());
  if (columns == nullptr && rows * sampled.channels.size() > 0) throw std::bad_alloc();
  const auto column = [&](std::size_t i) { return std::span(columns + i * rows, rows); };
  parallel_for(sampled.channels.size(), rows * sampled.channels.size(), [&](std::size_t i) {
    table.channels[i] = row_readings(record, record.channels[sampled.channels[i]].readings, column(i));
    table.channels[i].channel = sampled.channels[i];
    table.channels[i].evaluated = i < sampled.evaluated;
  });
  const std::span<const double> times = record.evaluated_times_s();
  table.joined.resize(rows);
  for (std::size_t row = 0; row + 1 < rows; ++row)
    table.joined[row] = times[row + 1] - times[row] <= kGapIntervals * record.interval_s ? 1 : 0;
  for (const Exclusion& exclusion : record.exclusions)
    for (std::size_t i = 0; i < table.channels.size(); ++i) {
      if (table.channels[i].channel != exclusion.channel) continue;
      const auto first = std::lower_bound(times.begin(), times.end(), exclusion.from_s) - times.begin();
      const auto last = std::upper_bound(times.begin(), times.end(), exclusion.to_s) - times.begin();
      if (first < last)
        std::fill(column(i).begin() + first, column(i).begin() + last, Readings::kMissingUnits);
    }
  return table;
}

double RowTable::celsius(std::size_t place, std::size_t row) const {
  return record->channels[channels[place].channel].readings.celsius(record->first_row + row).value_or(0.0);
}

std::vector<RowRun> equal_runs(const RowReadings& channel, std::size_t least) {
  const std::size_t rows = channel.rows();
  const std::int32_t* units = channel.units.data();
  if (std::count(channel.units.begin(), channel.units.end(), Readings::kMissingUnits) == 0)
    return complete_runs(channel.units, least);
  std::vector<RowRun> runs;
  for (std::size_t row = 0; row < rows;) {
    if (!channel.known(row)) {
      ++row;
      continue;
    }
    RowRun run{row, row, 1};
    std::size_t next = row + 1;
    for (; next < rows && (units[next] == units[row] || !channel.known(next)); ++next)
      if (channel.known(next)) {
        run.last = next;
        ++run.count;
      }
    if (run.count >= least) runs.push_back(run);
    row = next;
  }
  return runs;
}

}  // namespace soakwright
