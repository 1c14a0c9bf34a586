#include "core/phases/sampled_record.h"

#include <algorithm>
#include <array>

#include "core/phases/two_threads.h"

namespace soakwright {

namespace {

constexpr std::size_t kRowsPerCell = 3;  // the smallest number with a median that drops one wild reading
constexpr std::size_t kMostBridged = 3;  // cells

struct Cell {
  std::array<std::size_t, kRowsPerCell> rows{};
  std::size_t count = 0;
};

/// Rows of a cell that holds [first, last): all, or three spread evenly.
Cell rows_of_cell(std::size_t first, std::size_t last) {
  Cell cell;
  const std::size_t have = last - first;
  cell.count = std::min(have, kRowsPerCell);
  for (std::size_t i = 0; i < cell.count; ++i)
    cell.rows[i] = have <= kRowsPerCell ? first + i : first + (2 * i + 1) * have / (2 * kRowsPerCell);
  return cell;
}

/// Median of the first `count` of at most three values.
double median_of_few(const std::array<double, kRowsPerCell>& values, std::size_t count) {
  if (count == 1) return values[0];
  if (count == 2) return 0.5 * (values[0] + values[1]);
  return std::max(std::min(values[0], values[1]), std::min(std::max(values[0], values[1]), values[2]));
}

SampledTrace trace_of(const Channel& channel, const std::vector<Cell>& cells) {
  SampledTrace trace;
  trace.celsius.resize(cells.size());
  trace.known.resize(cells.size());
  trace.aside.resize(cells.size());
  for (std::size_t k = 0; k < cells.size(); ++k) {
    std::array<double, kRowsPerCell> values{};
    std::size_t count = 0;
    for (std::size_t i = 0; i < cells[k].count; ++i)
      if (const auto celsius = channel.readings.celsius(cells[k].rows[i])) values[count++] = *celsius;
    trace.known[k] = count > 0 ? 1 : 0;
    trace.celsius[k] = count > 0 ? median_of_few(values, count) : 0.0;
  }
  return trace;
}

/// Judged channels first, then spares and the heated band's edge. Air, set point and what is off are not the
/// work.
std::vector<std::size_t> channels_on_work(const Record& record, std::size_t& judged) {
  std::vector<std::size_t> channels;
  for (std::size_t c = 0; c < record.channels.size(); ++c)
    if (record.channels[c].judged()) channels.push_back(c);
  judged = channels.size();
  for (std::size_t c = 0; c < record.channels.size(); ++c) {
    const Channel& channel = record.channels[c];
    const bool on_work =
        channel.duty == Duty::control || channel.duty == Duty::monitor || channel.duty == Duty::spare;
    if (on_work && !channel.judged()) channels.push_back(c);
  }
  return channels;
}

/// Rows of each cell. Cells lie around begin + k * step, so that an even log of few rows has one row in each.
std::vector<Cell> divide(const Record& record, SampledRecord& sampled, std::size_t cells) {
  std::vector<Cell> rows_of(cells);
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
    rows_of[k] = rows_of_cell(first, row);
    double sum = 0.0;
    for (std::size_t i = 0; i < rows_of[k].count; ++i) sum += record.times_s[rows_of[k].rows[i]];
    sampled.times_s.push_back(rows_of[k].count > 0 ? sum / static_cast<double>(rows_of[k].count) : middle);
    sampled.rowless.push_back(rows_of[k].count == 0 ? 1 : 0);
  }
  return rows_of;
}

/// Cells that an aside touches are put aside whole.
void put_aside(const Record& record, SampledRecord& sampled) {
  const double reach = 0.5 * sampled.step_s;
  for (const Aside& aside : record.asides) {
    const auto at = std::find(sampled.channels.begin(), sampled.channels.end(), aside.channel);
    if (at == sampled.channels.end()) continue;
    SampledTrace& trace = sampled.traces[static_cast<std::size_t>(at - sampled.channels.begin())];
    for (std::size_t k = 0; k < sampled.cells(); ++k)
      if (sampled.times_s[k] + reach >= aside.from_s && sampled.times_s[k] - reach <= aside.to_s) {
        trace.known[k] = 0;
        trace.aside[k] = 1;
      }
  }
}

/// Lost readings of a cell or few lie on the line between their neighbours: else the middle of a small group
/// would jump by its spread each time that one of them is lost.
void bridge(SampledTrace& trace, const std::vector<double>& times_s) {
  std::size_t last = trace.known.size();  // known cell before
  for (std::size_t k = 0; k < trace.known.size(); ++k) {
    if (trace.known[k] == 0) continue;
    const bool near = last < k && k - last <= kMostBridged + 1;
    const bool aside = near && std::any_of(trace.aside.begin() + static_cast<std::ptrdiff_t>(last),
                                           trace.aside.begin() + static_cast<std::ptrdiff_t>(k),
                                           [](char cell) { return cell != 0; });
    if (near && !aside)
      for (std::size_t i = last + 1; i < k; ++i) {
        const double share = (times_s[i] - times_s[last]) / (times_s[k] - times_s[last]);
        trace.celsius[i] = trace.celsius[last] + share * (trace.celsius[k] - trace.celsius[last]);
        trace.known[i] = 1;
      }
    last = k;
  }
}

}  // namespace

SampledRecord sample_record(const Record& record, std::size_t most_cells) {
  SampledRecord sampled;
  const std::size_t rows = record.end_row - record.first_row;
  sampled.channels = channels_on_work(record, sampled.judged);
  if (rows < 2 || sampled.channels.empty()) return sampled;
  sampled.begin_s = record.begin_s();
  sampled.end_s = record.end_s();
  sampled.interval_s = record.interval_s;
  const std::size_t cells = std::min(rows, most_cells);
  sampled.step_s = sampled.duration_s() / static_cast<double>(cells - 1);
  const std::vector<Cell> rows_of = divide(record, sampled, cells);
  sampled.traces.resize(sampled.channels.size());
  in_two_threads(sampled.traces.size(), cells * sampled.traces.size(), [&](std::size_t i) {
    sampled.traces[i] = trace_of(record.channels[sampled.channels[i]], rows_of);
  });
  put_aside(record, sampled);
  for (SampledTrace& trace : sampled.traces) bridge(trace, sampled.times_s);
  return sampled;
}

}  // namespace soakwright
