#include "core/phases/sampled_record.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace soakwright {

namespace {

constexpr std::size_t kRowsPerCell = 3;  // the smallest number with a median that drops one wild reading

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

}  // namespace

std::vector<std::size_t> judged_channels(const Record& record) {
  std::vector<std::size_t> judged;
  for (std::size_t c = 0; c < record.channels.size(); ++c)
    if (record.channels[c].judged()) judged.push_back(c);
  return judged;
}

SampledRecord sample_record(const Record& record, const std::vector<std::size_t>& channels,
                            std::size_t most_cells) {
  SampledRecord sampled;
  const std::size_t rows = record.end_row - record.first_row;
  if (rows < 2 || channels.empty()) return sampled;
  sampled.begin_s = record.begin_s();
  sampled.end_s = record.end_s();
  sampled.interval_s = record.interval_s;
  const std::size_t cells = std::min(rows, most_cells);
  sampled.step_s = sampled.duration_s() / static_cast<double>(cells - 1);

  // Cells lie around begin + k * step, so that an even log of few rows has one row in each.
  std::vector<Cell> rows_of(cells);
  std::size_t row = record.first_row;
  for (std::size_t k = 0; k < cells; ++k) {
    const double middle = sampled.begin_s + sampled.step_s * static_cast<double>(k);
    const std::size_t first = row;
    const auto begin = record.times_s.begin();
    const auto end = begin + static_cast<std::ptrdiff_t>(record.end_row);
    row = k + 1 == cells
              ? record.end_row
              : static_cast<std::size_t>(std::lower_bound(begin + static_cast<std::ptrdiff_t>(first), end,
                                                          middle + 0.5 * sampled.step_s) -
                                         begin);
    rows_of[k] = rows_of_cell(first, row);
    double sum = 0.0;
    for (std::size_t i = 0; i < rows_of[k].count; ++i) sum += record.times_s[rows_of[k].rows[i]];
    sampled.times_s.push_back(rows_of[k].count > 0 ? sum / static_cast<double>(rows_of[k].count) : middle);
    sampled.rowless.push_back(rows_of[k].count == 0 ? 1 : 0);
  }

  sampled.channels = channels;
  for (const std::size_t c : channels) {
    sampled.traces.push_back(trace_of(record.channels[c], rows_of));
    sampled.resolution_k = std::max(sampled.resolution_k, record.channels[c].readings.resolution_k());
  }
  for (const Aside& aside : record.asides) {
    const auto at = std::find(channels.begin(), channels.end(), aside.channel);
    if (at == channels.end()) continue;
    SampledTrace& trace = sampled.traces[static_cast<std::size_t>(at - channels.begin())];
    const double reach = 0.5 * sampled.step_s;  // a cell that an aside touches is put aside whole
    for (std::size_t k = 0; k < cells; ++k)
      if (sampled.times_s[k] + reach >= aside.from_s && sampled.times_s[k] - reach <= aside.to_s)
        trace.known[k] = 0;
  }
  return sampled;
}

}  // namespace soakwright
