// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/phase_spread.h"

#include <algorithm>
#include <array>
#include <limits>

#include "core/phases/decimal_extent.h"
#include "core/system/parallel_for.h"

namespace soakwright {

namespace {

constexpr std::size_t kRowsAtOnce = 4096;  // highest and lowest of a block stay in the near cache

/// Highest and lowest of the channels taken in so far, for each row of a block.
struct CellExtent {
  std::vector<double> high;
  std::vector<double> low;
  explicit CellExtent(std::size_t rows)
      : high(rows, -std::numeric_limits<double>::infinity()),
        low(rows, std::numeric_limits<double>::infinity()) {}
  void take(std::size_t row, double celsius) {
    high[row] = std::max(high[row], celsius);
    low[row] = std::min(low[row], celsius);
  }
};

/// Those of a channel's exclusions that touch the rows [first, last).
std::vector<const Exclusion*> exclusions_in(const Record& record, std::size_t channel, std::size_t first,
                                            std::size_t last) {
  std::vector<const Exclusion*> exclusions;
  for (const Exclusion& exclusion : record.exclusions)
    if (exclusion.channel == channel && exclusion.to_s >= record.times_s[first] &&
        exclusion.from_s <= record.times_s[last - 1])
      exclusions.push_back(&exclusion);
  return exclusions;
}

/// Highest less lowest of the row in [first, last) where that is most; 0 where no two are known in any.
double widest_of_any(const Record& record, const std::vector<std::size_t>& channels, std::size_t first,
                     std::size_t last) {
  std::vector<std::uint32_t> rows;
  std::vector<double> celsius;
  CellExtent extent(last - first);
  for (const std::size_t c : channels) {
    rows.clear();
    celsius.clear();
    record.channels[c].readings.collect(first, last, rows, celsius);
    const std::vector<const Exclusion*> exclusions = exclusions_in(record, c, first, last);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      const double at = record.times_s[rows[i]];
      const bool excluded = std::any_of(
          exclusions.begin(), exclusions.end(),
          [at](const Exclusion* exclusion) { return at >= exclusion->from_s && at <= exclusion->to_s; });
      if (!excluded) extent.take(rows[i] - first, celsius[i]);
    }
  }
  double most = 0.0;
  for (std::size_t k = 0; k < last - first; ++k) most = std::max(most, extent.high[k] - extent.low[k]);
  return most;
}

/// The same where all channels are decimals of one scale and none is excluded here.
double widest_of_decimals(const Record& record, const std::vector<std::size_t>& channels,
                          const DecimalScale& scale, std::size_t first, std::size_t last) {
  DecimalExtent extent(last - first);
  for (const std::size_t c : channels)
    record.channels[c].readings.visit_units(
        first, last, [&](std::size_t row, const std::int32_t* units, std::size_t count) {
          extent.take(row - first, units, count);
        });
  return static_cast<double>(std::int64_t{extent.widest()} * scale.factor) /
         static_cast<double>(scale.divisor);
}

/// What the decimals of all the channels mean, where they are decimals and mean the same.
const DecimalScale* common_scale(const Record& record, const std::vector<std::size_t>& channels) {
  const DecimalScale* scale = nullptr;
  for (const std::size_t c : channels) {
    const DecimalScale* const own = record.channels[c].readings.decimals();
    if (own == nullptr || (scale != nullptr && *own != *scale)) return nullptr;
    scale = own;
  }
  return scale;
}

/// Largest spread in the rows [first, last).
double spread_within(const Record& record, const std::vector<std::size_t>& channels, std::size_t first,
                     std::size_t last) {
  const DecimalScale* const scale = common_scale(record, channels);
  double most = 0.0;
  for (std::size_t begin = first; begin < last; begin += kRowsAtOnce) {
    const std::size_t end = std::min(begin + kRowsAtOnce, last);
    const bool whole = std::all_of(channels.begin(), channels.end(), [&](std::size_t c) {
      return exclusions_in(record, c, begin, end).empty();
    });
    most = std::max(most, scale != nullptr && whole ? widest_of_decimals(record, channels, *scale, begin, end)
                                                    : widest_of_any(record, channels, begin, end));
  }
  return most;
}

}  // namespace

void measure_spread(const Record& record, std::vector<Phase>& phases) {
  std::vector<std::size_t> channels;
  for (std::size_t c = 0; c < record.channels.size(); ++c)
    if (record.channels[c].evaluated()) channels.push_back(c);
  // Half of the rows each, and not of the phases, which are of any length.
  const std::size_t middle = record.first_row + (record.end_row - record.first_row) / 2;
  std::array<std::vector<double>, 2> most;
  parallel_for(2, (record.end_row - record.first_row) * channels.size(), [&](std::size_t half) {
    for (const Phase& phase : phases) {
      const auto times = record.evaluated_times_s();
      const auto from = std::lower_bound(times.begin(), times.end(), phase.start_s) - times.begin();
      const auto to = std::upper_bound(times.begin(), times.end(), phase.end_s) - times.begin();
      const std::size_t first = record.first_row + static_cast<std::size_t>(from);
      const std::size_t last = record.first_row + static_cast<std::size_t>(to);
      most[half].push_back(half == 0 ? spread_within(record, channels, first, std::min(last, middle))
                                     : spread_within(record, channels, std::max(first, middle), last));
    }
  });
  for (std::size_t i = 0; i < phases.size(); ++i) phases[i].spread_max_k = std::max(most[0][i], most[1][i]);
}

}  // namespace soakwright
