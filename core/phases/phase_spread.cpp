#include "core/phases/phase_spread.h"

#include <algorithm>
#include <limits>
#include <thread>

#include "core/phases/sampled_record.h"

namespace soakwright {

namespace {

constexpr std::size_t kRowsAtOnce = 4096;          // highest and lowest of a block stay in the near cache
constexpr std::size_t kRowsForTwoThreads = 20000;  // below, starting a thread costs more than it saves

/// Highest less lowest in each row of [first, last); negative where fewer than two channels are known.
void spread_of_rows(const Record& record, const std::vector<std::size_t>& channels, std::size_t first,
                    std::size_t last, std::vector<double>& spread) {
  const double none = std::numeric_limits<double>::infinity();
  std::vector<double> high;
  std::vector<double> low;
  std::vector<std::uint32_t> rows;
  std::vector<double> celsius;
  for (std::size_t begin = first; begin < last; begin += kRowsAtOnce) {
    const std::size_t end = std::min(begin + kRowsAtOnce, last);
    high.assign(end - begin, -none);
    low.assign(end - begin, none);
    std::vector<int> count(end - begin, 0);
    for (const std::size_t c : channels) {
      rows.clear();
      celsius.clear();
      record.channels[c].readings.collect(begin, end, rows, celsius);
      std::vector<const Aside*> asides;
      for (const Aside& aside : record.asides)
        if (aside.channel == c && aside.to_s >= record.times_s[begin] &&
            aside.from_s <= record.times_s[end - 1])
          asides.push_back(&aside);
      for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::size_t k = rows[i] - begin;
        if (!asides.empty()) {
          const double at = record.times_s[rows[i]];
          if (std::any_of(asides.begin(), asides.end(),
                          [at](const Aside* aside) { return at >= aside->from_s && at <= aside->to_s; }))
            continue;
        }
        high[k] = std::max(high[k], celsius[i]);
        low[k] = std::min(low[k], celsius[i]);
        ++count[k];
      }
    }
    for (std::size_t k = 0; k < end - begin; ++k)
      spread[begin - record.first_row + k] = count[k] >= 2 ? high[k] - low[k] : -1.0;
  }
}

}  // namespace

void measure_spread(const Record& record, std::vector<Phase>& phases) {
  const std::vector<std::size_t> channels = judged_channels(record);
  const std::size_t rows = record.end_row - record.first_row;
  std::vector<double> spread(rows, -1.0);
  if (rows >= kRowsForTwoThreads) {
    const std::size_t half = record.first_row + rows / 2;
    std::thread other([&] { spread_of_rows(record, channels, half, record.end_row, spread); });
    spread_of_rows(record, channels, record.first_row, half, spread);
    other.join();
  } else {
    spread_of_rows(record, channels, record.first_row, record.end_row, spread);
  }
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
