// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/sampled_record.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/system/parallel_for.h"

namespace soakwright {

namespace {

constexpr std::size_t kRowsPerCell = 3;       // the smallest number with a median that drops one wild reading
constexpr std::size_t kMostInterpolated = 3;  // cells

/// The rows of all cells in one list, and where in it each cell begins; one entry more for the end.
struct CellRows {
  std::vector<std::size_t> rows;
  std::vector<std::size_t> begin;
  [[nodiscard]] std::size_t count(std::size_t cell) const { return begin[cell + 1] - begin[cell]; }
};

/// Adds a cell that holds the rows [first, last): all, or three spread evenly.
void add_cell(CellRows& cells, std::size_t first, std::size_t last) {
  const std::size_t have = last - first;
  for (std::size_t i = 0; i < std::min(have, kRowsPerCell); ++i)
    cells.rows.push_back(have <= kRowsPerCell ? first + i : first + (2 * i + 1) * have / (2 * kRowsPerCell));
  cells.begin.push_back(cells.rows.size());
}

/// Median of the first `count` of at most three values.
double median_of_few(const std::array<double, kRowsPerCell>& values, std::size_t count) {
  if (count == 1) return values[0];
  if (count == 2) return 0.5 * (values[0] + values[1]);
  return std::max(std::min(values[0], values[1]), std::min(std::max(values[0], values[1]), values[2]));
}

SampledTrace trace_of(const Channel& channel, const CellRows& cells) {
  const std::size_t count = cells.begin.size() - 1;
  SampledTrace trace;
  trace.celsius.resize(count);
  trace.known.resize(count);
  trace.exclusion.resize(count);
  std::vector<double> readings(cells.rows.size());
  channel.readings.celsius_at(cells.rows, readings.data());
  for (std::size_t k = 0; k < count; ++k) {
    std::array<double, kRowsPerCell> values{};
    std::size_t known = 0;
    for (std::size_t i = cells.begin[k]; i < cells.begin[k + 1]; ++i)
      if (!std::isnan(readings[i])) values[known++] = readings[i];
    trace.known[k] = known > 0 ? 1 : 0;
    trace.celsius[k] = known > 0 ? median_of_few(values, known) : 0.0;
  }
  return trace;
}

/// Evaluated channels first, then spares and the heated band's edge. Air, set point and what is off are not
/// the work.
std::vector<std::size_t> channels_on_work(const Record& record, std::size_t& evaluated) {
  std::vector<std::size_t> channels;
  for (std::size_t c = 0; c < record.channels.size(); ++c)
    if (record.channels[c].evaluated()) channels.push_back(c);
  evaluated = channels.size();
  for (std::size_t c = 0; c < record.channels.size(); ++c) {
    const Channel& channel = record.channels[c];
    const bool on_work = channel.role == ThermocoupleRole::control ||
                         channel.role == ThermocoupleRole::monitor || channel.role == ThermocoupleRole::spare;
    if (on_work && !channel.evaluated()) channels.push_back(c);
  }
  return channels;
}

/// Rows of each cell. Cells lie around begin + k * step, so that an even log of few rows has one row in each.
CellRows divide(const Record& record, SampledRecord& sampled, std::size_t cells) {
  CellRows rows_of;
  rows_of.rows.reserve(kRowsPerCell * cells);
  rows_of.begin.reserve(cells + 1);
  rows_of.begin.push_back(0);
  std::size_t row = record.first_row;
  const auto begin = record.times_s.begin();
  const auto end = begin + static_cast<std::ptrdiff_t>(record.end_row);
  for (std::size_t k = 0; k < cells; ++k) {
    const double middle = sampled.begin_s + sampled.step_s * static_cast<double>(k);
    const std::size_t first = row;
    const auto from = begin + static_cast<std::ptrdiff_t>(first);
    row = k + 1 == cells
              ? record.end_row
              : static_cast<std::size_t>(std::lower_bound(from, end, middle + 0.5 * sampled.step_s) - begin);
    add_cell(rows_of, first, row);
    double sum = 0.0;
    for (std::size_t i = rows_of.begin[k]; i < rows_of.begin[k + 1]; ++i)
      sum += record.times_s[rows_of.rows[i]];
    const std::size_t count = rows_of.count(k);
    sampled.times_s.push_back(count > 0 ? sum / static_cast<double>(count) : middle);
    sampled.rowless.push_back(count == 0 ? 1 : 0);
  }
  return rows_of;
}

/// Cells that an exclusion touches are excluded whole.
void excluded(const Record& record, SampledRecord& sampled) {
  const double reach = 0.5 * sampled.step_s;
  for (const Exclusion& exclusion : record.exclusions) {
    const auto at = std::find(sampled.channels.begin(), sampled.channels.end(), exclusion.channel);
    if (at == sampled.channels.end()) continue;
    SampledTrace& trace = sampled.traces[static_cast<std::size_t>(at - sampled.channels.begin())];
    for (std::size_t k = 0; k < sampled.cells(); ++k)
      if (sampled.times_s[k] + reach >= exclusion.from_s && sampled.times_s[k] - reach <= exclusion.to_s) {
        trace.known[k] = 0;
        trace.exclusion[k] = 1;
      }
  }
}

/// Lost readings of a cell or few lie on the line between their neighbours: else the middle of a small group
/// would jump by its spread each time that one of them is lost.
void interpolate_max(SampledTrace& trace, const std::vector<double>& times_s) {
  std::size_t last = trace.known.size();  // known cell before
  for (std::size_t k = 0; k < trace.known.size(); ++k) {
    if (trace.known[k] == 0) continue;
    const bool near = last < k && k - last <= kMostInterpolated + 1;
    const bool exclusion = near && std::any_of(trace.exclusion.begin() + static_cast<std::ptrdiff_t>(last),
                                               trace.exclusion.begin() + static_cast<std::ptrdiff_t>(k),
                                               [](char cell) { return cell != 0; });
    if (near && !exclusion)
      for (std::size_t i = last + 1; i < k; ++i) {
        const double share = (times_s[i] - times_s[last]) / (times_s[k] - times_s[last]);
        trace.celsius[i] = trace.celsius[last] + share * (trace.celsius[k] - trace.celsius[last]);
        trace.known[i] = 1;
      }
    last = k;
  }
}

/// Puts what is known in a cell in another order.
CellMiddle middle_of(std::vector<double>& known) {
  CellMiddle middle;
  middle.count = known.size();
  const std::size_t first = known.size() >= 2 ? (known.size() - 2) / 2 : 0;
  const auto from = known.begin() + static_cast<std::ptrdiff_t>(first);
  const auto have = std::min<std::ptrdiff_t>(3, known.end() - from);
  if (have == 0) return middle;
  std::nth_element(known.begin(), from, known.end());
  std::partial_sort(from + 1, from + have, known.end());
  std::copy_n(from, have, middle.celsius.begin());
  return middle;
}

}  // namespace

SampledRecord sample_record(const Record& record, std::size_t most_cells) {
  SampledRecord sampled;
  const std::size_t rows = record.end_row - record.first_row;
  sampled.channels = channels_on_work(record, sampled.evaluated);
  if (rows < 2 || sampled.channels.empty()) return sampled;
  sampled.begin_s = record.begin_s();
  sampled.end_s = record.end_s();
  sampled.interval_s = record.interval_s;
  const std::size_t cells = std::min(rows, most_cells);
  sampled.step_s = sampled.duration_s() / static_cast<double>(cells - 1);
  const CellRows rows_of = divide(record, sampled, cells);
  sampled.traces.resize(sampled.channels.size());
  parallel_for(sampled.traces.size(), cells * sampled.traces.size(), [&](std::size_t i) {
    sampled.traces[i] = trace_of(record.channels[sampled.channels[i]], rows_of);
  });
  excluded(record, sampled);
  for (SampledTrace& trace : sampled.traces) interpolate_max(trace, sampled.times_s);
  find_middles(sampled);
  return sampled;
}

void find_middles(SampledRecord& sampled) {
  sampled.middles.assign(sampled.cells(), {});
  const std::size_t half = sampled.cells() / 2;
  parallel_for(2, sampled.cells() * sampled.evaluated, [&](std::size_t part) {
    std::vector<double> known;
    for (std::size_t k = part == 0 ? 0 : half; k < (part == 0 ? half : sampled.cells()); ++k) {
      known.clear();
      for (std::size_t i = 0; i < sampled.evaluated; ++i)
        if (sampled.traces[i].known[k] != 0) known.push_back(sampled.traces[i].celsius[k]);
      sampled.middles[k] = middle_of(known);
    }
  });
}

double CellMiddle::median() const {
  if (count == 1) return celsius[0];
  if (count % 2 == 1) return celsius[1];
  return 0.5 * (celsius[0] + celsius[1]);
}

double CellMiddle::median_without(double own) const {
  const std::size_t left = count - 1;
  const std::size_t first = (count - 2) / 2;
  const auto at = [&](std::size_t place) {  // of the sorted others
    const double here = celsius[place - first];
    return own > here ? here : celsius[place - first + 1];
  };
  return 0.5 * (at((left - 1) / 2) + at(left / 2));
}

}  // namespace soakwright
