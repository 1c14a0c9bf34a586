#include "core/phases/phase_spread.h"

#include <algorithm>
#include <limits>

#include "core/phases/two_threads.h"

namespace soakwright {

namespace {

constexpr std::size_t kRowsAtOnce = 4096;  // highest and lowest of a block stay in the near cache

/// Highest and lowest of the channels taken in so far, for each row of a block.
struct Extent {
  std::vector<double> high;
  std::vector<double> low;
  std::vector<int> channels;
  explicit Extent(std::size_t rows)
      : high(rows, -std::numeric_limits<double>::infinity()),
        low(rows, std::numeric_limits<double>::infinity()),
        channels(rows, 0) {}
  void take(std::size_t row, double celsius) {
    high[row] = std::max(high[row], celsius);
    low[row] = std::min(low[row], celsius);
    ++channels[row];
  }
  /// A reading in every row: one plain loop.
  void take_all(const std::vector<double>& celsius) {
    for (std::size_t i = 0; i < celsius.size(); ++i) high[i] = celsius[i] > high[i] ? celsius[i] : high[i];
    for (std::size_t i = 0; i < celsius.size(); ++i) low[i] = celsius[i] < low[i] ? celsius[i] : low[i];
    for (int& count : channels) ++count;
  }
};

/// Those of a channel's asides that touch the rows [first, last).
std::vector<const Aside*> asides_in(const Record& record, std::size_t channel, std::size_t first,
                                    std::size_t last) {
  std::vector<const Aside*> asides;
  for (const Aside& aside : record.asides)
    if (aside.channel == channel && aside.to_s >= record.times_s[first] &&
        aside.from_s <= record.times_s[last - 1])
      asides.push_back(&aside);
  return asides;
}

/// Highest less lowest in each row of [first, last); negative where fewer than two channels are known.
void spread_of_rows(const Record& record, const std::vector<std::size_t>& channels, std::size_t first,
                    std::size_t last, std::vector<double>& spread) {
  std::vector<std::uint32_t> rows;
  std::vector<double> celsius;
  for (std::size_t begin = first; begin < last; begin += kRowsAtOnce) {
    const std::size_t end = std::min(begin + kRowsAtOnce, last);
    Extent extent(end - begin);
    for (const std::size_t c : channels) {
      rows.clear();
      celsius.clear();
      record.channels[c].readings.collect(begin, end, rows, celsius);
      const std::vector<const Aside*> asides = asides_in(record, c, begin, end);
      if (asides.empty() && rows.size() == end - begin) {
        extent.take_all(celsius);
        continue;
      }
      for (std::size_t i = 0; i < rows.size(); ++i) {
        const double at = record.times_s[rows[i]];
        const bool put_aside = std::any_of(asides.begin(), asides.end(), [at](const Aside* aside) {
          return at >= aside->from_s && at <= aside->to_s;
        });
        if (!put_aside) extent.take(rows[i] - begin, celsius[i]);
      }
    }
    for (std::size_t k = 0; k < end - begin; ++k)
      spread[begin - record.first_row + k] = extent.channels[k] >= 2 ? extent.high[k] - extent.low[k] : -1.0;
  }
}

}  // namespace

void measure_spread(const Record& record, std::vector<Phase>& phases) {
  std::vector<std::size_t> channels;
  for (std::size_t c = 0; c < record.channels.size(); ++c)
    if (record.channels[c].judged()) channels.push_back(c);
  const std::size_t rows = record.end_row - record.first_row;
  std::vector<double> spread(rows, -1.0);
  in_two_threads(2, rows * channels.size(), [&](std::size_t half) {
    const std::size_t middle = record.first_row + rows / 2;
    spread_of_rows(record, channels, half == 0 ? record.first_row : middle,
                   half == 0 ? middle : record.end_row, spread);
  });
  const auto times = record.judged_times_s();
  for (Phase& phase : phases) {
    const auto first = std::lower_bound(times.begin(), times.end(), phase.start_s) - times.begin();
    const auto last = std::upper_bound(times.begin(), times.end(), phase.end_s) - times.begin();
    phase.spread_max_k = 0.0;
    if (first < last)
      phase.spread_max_k = std::max(0.0, *std::max_element(spread.begin() + first, spread.begin() + last));
  }
}

}  // namespace soakwright
