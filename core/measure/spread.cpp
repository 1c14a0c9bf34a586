// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/spread.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/system/parallel_for.h"

namespace soakwright {
namespace {

/// Two spreads closer than this are equal: no binary rounding decides which row is named.
constexpr double kSameSpread_k = 1e-9;
constexpr double kPlaceSlack_m = 1e-9;
constexpr std::size_t kTilesTogether = 16;  ///< that one thread looks through at once

/// The channel whose reading a trace has at a record row, where it has one there.
std::optional<std::size_t> channel_at_row(const Record& record, const Trace& trace, std::size_t row) {
  const double t = record.times_s[row];
  for (auto source = trace.sources.begin(); source != trace.sources.end(); ++source) {
    const bool second = source != trace.sources.begin();
    if (trace.take_over_s && second != (t > *trace.take_over_s)) continue;
    if (record.channels[source->channel].readings.celsius(row)) return source->channel;
  }
  return std::nullopt;
}

/// Hottest and coldest of each row of a tile; hottest below coldest where nothing is known.
struct RowEdges {
  std::vector<double> high, low;
  bool all_known = true;

  void find(std::size_t count, const std::vector<ColumnTile>& columns) {
    high.assign(count, -std::numeric_limits<double>::infinity());
    low.assign(count, std::numeric_limits<double>::infinity());
    all_known = true;
    for (const ColumnTile& column : columns) {
      if (column.known == nullptr) {
        for (std::size_t r = 0; r < count; ++r) {
          high[r] = std::max(high[r], column.celsius[r]);
          low[r] = std::min(low[r], column.celsius[r]);
        }
        continue;
      }
      all_known = false;
      for (std::size_t r = 0; r < count; ++r) {
        if (column.known[r] == 0) continue;
        high[r] = std::max(high[r], column.celsius[r]);
        low[r] = std::min(low[r], column.celsius[r]);
      }
    }
  }
};

/// Of the rows of a tile: whether one is known, and the largest spread, alone and with the largest
/// uncertainty.
struct TilePeak {
  bool known = false;
  double kelvin = -std::numeric_limits<double>::infinity();
  double bound_k = -std::numeric_limits<double>::infinity();
};

/// Finds the widest rows of a group, tile by tile.
class SpreadMeter {
 public:
  SpreadMeter(const Record& record, const TraceSet& set, Group group, const SpecifiedSpread& specified)
      : record_(record), set_(set), group_(group), specified_(specified), rows_(record, set, group) {
    if (specified.guard != nullptr) sort_into_kinds();
    if (!specified.within_m) return;
    for (const std::size_t index : group)
      places_m_.push_back(record.channels[set.traces[index].channel].position_m.value_or(0.0));
  }

  void add(const Span& time) {
    const auto [within, end] = rows_.rows_within(time.first, time.second);
    const std::size_t first = std::max(within, next_row_);
    const std::vector<TilePeak> peaks = peaks_of(first, end);
    for (std::size_t at = first, tile = 0; at < end; at += RowValues::kRows, ++tile) {
      if (tile < peaks.size() && changes_nothing(peaks[tile])) {
        if (peaks[tile].known) place_open_ = false;
        continue;
      }
      rows_.visit_tiles(at, std::min(end, at + RowValues::kRows),
                        [&](std::size_t from, std::size_t count, const auto& columns) {
                          measure_tile(from, count, columns);
                          return true;
                        });
    }
    next_row_ = std::max(next_row_, end);
  }

  Spread result() { return std::move(spread_); }

 private:
  /// Peaks of the tiles from row `first`, found on all threads; none where that is not worth it.
  std::vector<TilePeak> peaks_of(std::size_t first, std::size_t end) const {
    if (end <= first || machine_threads() < 2) return {};
    const std::size_t tiles = (end - first + RowValues::kRows - 1) / RowValues::kRows;
    if (tiles < kTilesTogether) return {};
    std::vector<TilePeak> peaks(tiles);
    parallel_for((tiles + kTilesTogether - 1) / kTilesTogether, (end - first) * group_.size(),
                 [&](std::size_t some) {
                   const std::size_t from = first + some * kTilesTogether * RowValues::kRows;
                   const std::size_t to = std::min(end, from + kTilesTogether * RowValues::kRows);
                   RowValues rows(record_, set_, group_);
                   RowEdges edges;
                   rows.visit_tiles(from, to, [&](std::size_t at, std::size_t count, const auto& columns) {
                     edges.find(count, columns);
                     peaks[(at - first) / RowValues::kRows] = peak_of(edges);
                     return true;
                   });
                 });
    return peaks;
  }

  TilePeak peak_of(const RowEdges& edges) const {
    TilePeak peak;
    for (std::size_t r = 0; r < edges.high.size(); ++r) {
      const double high = edges.high[r];
      const double low = edges.low[r];
      if (high < low) continue;
      peak.known = true;
      if (is_below(high)) continue;
      peak.kelvin = std::max(peak.kelvin, high - low);
      peak.bound_k = std::max(peak.bound_k, high - low + largest_uncertainty(low, high));
    }
    return peak;
  }

  /// A row whose hottest channel is this hot does not count.
  [[nodiscard]] bool is_below(double high_c) const {
    return specified_.above_c && high_c < *specified_.above_c - kTemperatureSlack;
  }

  /// Neither the widest, nor the largest, nor beyond the limit.
  [[nodiscard]] bool changes_nothing(const TilePeak& peak) const {
    const bool could_lead = !spread_.widest || peak.bound_k > spread_.widest->held_k() + kSameSpread_k;
    const bool largest = specified_.guard != nullptr &&
                         (!spread_.largest || peak.kelvin > spread_.largest->kelvin + kSameSpread_k);
    const bool could_be_wide = specified_.limit_k && peak.bound_k > *specified_.limit_k + kTemperatureSlack;
    return !could_lead && !could_be_wide && !largest;
  }

  void measure_tile(std::size_t at, std::size_t count, const std::vector<ColumnTile>& columns) {
    edges_.find(count, columns);
    for (std::size_t r = 0; r < count; ++r) {
      const double high = edges_.high[r];
      const double low = edges_.low[r];
      if (high < low) continue;
      const double bound_k = high - low + largest_uncertainty(low, high);
      if (is_below(high) || changes_nothing({true, high - low, bound_k})) {
        place_open_ = false;
        continue;
      }
      if (!edges_.all_known && !enough_known(columns, r)) {
        place_open_ = false;
        continue;
      }
      take(measured_at(at + r, columns, r));
    }
  }

  static bool enough_known(const std::vector<ColumnTile>& columns, std::size_t r) {
    std::size_t known = 0;
    for (const ColumnTile& column : columns)
      if (column.known == nullptr || column.known[r] != 0) ++known;
    return known >= 2;
  }

  /// The widest pair of a row, the first in the log's order of equals.
  std::optional<MeasuredSpread> measured_at(std::size_t row, const std::vector<ColumnTile>& columns,
                                            std::size_t r) {
    if (columns.size() < 2) return std::nullopt;
    std::optional<MeasuredSpread> best;
    bool surely = false;
    const auto known = [&](std::size_t m) { return columns[m].known == nullptr || columns[m].known[r] != 0; };
    const auto try_pair = [&](std::size_t hot, std::size_t cold) {
      MeasuredSpread pair{record_.times_s[row],
                          columns[hot].celsius[r] - columns[cold].celsius[r],
                          group_[hot],
                          group_[cold],
                          columns[hot].celsius[r],
                          columns[cold].celsius[r]};
      if (specified_.guard != nullptr) {
        pair.uncertainty_k = pair_uncertainty_k(uncertainty(hot, pair.at_s, pair.hottest_c),
                                                uncertainty(cold, pair.at_s, pair.coldest_c));
        surely = surely || (specified_.limit_k &&
                            pair.kelvin - pair.uncertainty_k > *specified_.limit_k + kTemperatureSlack);
      }
      if (!largest_of_row_ || pair.kelvin > largest_of_row_->kelvin + kSameSpread_k) largest_of_row_ = pair;
      if (best && pair.held_k() <= best->held_k() + kSameSpread_k) return;
      best = pair;
    };
    largest_of_row_.reset();
    if (specified_.within_m) {
      for (std::size_t hot = 0; hot < columns.size(); ++hot)
        for (std::size_t cold = 0; known(hot) && cold < columns.size(); ++cold)
          if (cold != hot && known(cold) &&
              std::fabs(places_m_[hot] - places_m_[cold]) <= *specified_.within_m + kPlaceSlack_m)
            try_pair(hot, cold);
    } else {
      // Of channels that are equally uncertain only the hottest and the coldest can make the widest pair: a
      // temperature grows faster than its U.
      const std::size_t none = columns.size();
      hottest_.assign(kinds(), none);
      coldest_.assign(kinds(), none);
      for (std::size_t m = 0; m < columns.size(); ++m) {
        if (!known(m)) continue;
        const std::size_t kind = kind_of(m, record_.times_s[row]);
        std::size_t& hot = hottest_[kind];
        std::size_t& cold = coldest_[kind];
        if (hot == none || columns[m].celsius[r] > columns[hot].celsius[r]) hot = m;
        if (cold == none || columns[m].celsius[r] < columns[cold].celsius[r]) cold = m;
      }
      for (const std::size_t hot : hottest_)
        for (const std::size_t cold : coldest_)
          if (hot != none && cold != none && (hot != cold || kinds() == 1)) try_pair(hot, cold);
      // All that are known read the same: any of them stands for the pair.
      for (std::size_t kind = 0; !best && kind < kinds(); ++kind)
        if (hottest_[kind] != none) try_pair(hottest_[kind], coldest_[kind]);
    }
    if (!best) return best;
    best->kelvin = exact(row, *best);
    best->surely = specified_.guard == nullptr
                       ? specified_.limit_k && best->kelvin > *specified_.limit_k + kTemperatureSlack
                       : surely;
    return best;
  }

  // ---- kinds of channels: those that are equally uncertain; without a guard all are of one kind ----

  void sort_into_kinds() {
    for (const std::size_t index : group_) {
      std::vector<std::size_t> of_sources;
      for (std::size_t source = 0; source < set_.traces[index].sources.size(); ++source) {
        const Budget& budget = specified_.guard->of(set_.traces[index], source);
        const auto same = std::find_if(budgets_.begin(), budgets_.end(),
                                       [&](const Budget* other) { return other->same_size(budget); });
        of_sources.push_back(static_cast<std::size_t>(same - budgets_.begin()));
        if (same == budgets_.end()) budgets_.push_back(&budget);
      }
      kind_of_source_.push_back(std::move(of_sources));
    }
  }
  [[nodiscard]] std::size_t kinds() const { return std::max<std::size_t>(1, budgets_.size()); }
  [[nodiscard]] std::size_t kind_of(std::size_t member, double t_s) const {
    if (budgets_.empty()) return 0;
    const auto& change = set_.traces[group_[member]].take_over_s;
    return kind_of_source_[member][change && t_s > *change ? 1 : 0];
  }
  [[nodiscard]] double uncertainty(std::size_t member, double t_s, double celsius) const {
    return budgets_[kind_of(member, t_s)]->expanded_k(celsius);
  }
  /// No pair between these temperatures has a larger U.
  [[nodiscard]] double largest_uncertainty(double low_c, double high_c) const {
    double largest = 0.0;
    for (const Budget* budget : budgets_)
      largest = std::max({largest, budget->expanded_k(low_c), budget->expanded_k(high_c)});
    return largest == 0.0 ? 0.0 : pair_uncertainty_k(largest, largest);
  }

  /// Both readings as the decimals that the log printed, where both have one in this row.
  double exact(std::size_t row, const MeasuredSpread& spread) const {
    const auto hot = channel_at_row(record_, set_.traces[spread.hottest], row);
    const auto cold = channel_at_row(record_, set_.traces[spread.coldest], row);
    if (!hot || !cold) return spread.kelvin;
    return Readings::difference_k(record_.channels[*hot].readings, row, record_.channels[*cold].readings,
                                  row);
  }

  void take(const std::optional<MeasuredSpread>& measured) {
    if (!measured) {
      place_open_ = false;
      return;
    }
    if (!spread_.widest || measured->held_k() > spread_.widest->held_k() + kSameSpread_k)
      spread_.widest = measured;
    if (largest_of_row_ &&
        (!spread_.largest || largest_of_row_->kelvin > spread_.largest->kelvin + kSameSpread_k))
      spread_.largest = largest_of_row_;
    spread_.surely = spread_.surely || measured->surely;
    if (!specified_.limit_k || measured->held_k() <= *specified_.limit_k + kTemperatureSlack) {
      place_open_ = false;
      return;
    }
    if (!place_open_) spread_.places.push_back({{measured->at_s, measured->at_s}, *measured, false});
    place_open_ = true;
    WideTime& place = spread_.places.back();
    place.time.second = measured->at_s;
    if (measured->held_k() > place.widest.held_k() + kSameSpread_k) place.widest = *measured;
    place.surely = place.surely || measured->surely;
  }

  const Record& record_;
  const TraceSet& set_;
  Group group_;
  const SpecifiedSpread& specified_;
  RowValues rows_;
  std::vector<double> places_m_;
  std::vector<const Budget*> budgets_;                    ///< one of each kind
  std::vector<std::vector<std::size_t>> kind_of_source_;  ///< per member
  std::vector<std::size_t> hottest_, coldest_;            ///< members, per kind
  RowEdges edges_;
  std::optional<MeasuredSpread> largest_of_row_;
  Spread spread_;
  bool place_open_ = false;
  std::size_t next_row_ = 0;
};

}  // namespace

bool can_compare(const Record& record, const TraceSet& set, Group group, std::optional<double> within_m) {
  const auto place = [&](std::size_t member) {
    return record.channels[set.traces[group[member]].channel].position_m.value_or(0.0);
  };
  for (std::size_t i = 0; i < group.size(); ++i)
    for (std::size_t k = i + 1; k < group.size(); ++k)
      if (!within_m || std::fabs(place(i) - place(k)) <= *within_m + kPlaceSlack_m) return true;
  return false;
}

Spread measure_spread(const Record& record, const TraceSet& set, Group group, const std::vector<Span>& times,
                      const SpecifiedSpread& specified) {
  SpreadMeter meter(record, set, group, specified);
  for (const Span& time : times) meter.add(time);
  return meter.result();
}

}  // namespace soakwright
