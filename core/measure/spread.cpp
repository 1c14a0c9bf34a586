#include "core/measure/spread.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace soakwright {
namespace {

/// Two spreads closer than this are equal: no binary rounding decides which row is named.
constexpr double kSameSpread_k = 1e-9;
constexpr double kPlaceSlack_m = 1e-9;

/// The channel whose reading a trace has at a record row, where it has one there.
std::optional<std::size_t> channel_at_row(const Record& record, const Trace& trace, std::size_t row) {
  const double t = record.times_s[row];
  for (auto leg = trace.legs.begin(); leg != trace.legs.end(); ++leg) {
    const bool second = leg != trace.legs.begin();
    if (trace.take_over_s && second != (t > *trace.take_over_s)) continue;
    if (record.channels[leg->channel].readings.celsius(row)) return leg->channel;
  }
  return std::nullopt;
}

/// Finds the widest rows of a group, tile by tile.
class SpreadMeter {
 public:
  SpreadMeter(const Record& record, const TraceSet& set, Group group, const SpreadAsked& asked)
      : record_(record), set_(set), group_(group), asked_(asked), rows_(record, set, group) {
    if (!asked.within_m) return;
    for (const std::size_t index : group)
      places_m_.push_back(record.channels[set.traces[index].channel].at_m.value_or(0.0));
  }

  void add(const Span& time) {
    const auto [first, end] = rows_.rows_within(time.first, time.second);
    rows_.visit_tiles(std::max(first, next_row_), end,
                      [&](std::size_t at, std::size_t count, const auto& columns) {
                        measure_tile(at, count, columns);
                        return true;
                      });
    next_row_ = std::max(next_row_, end);
  }

  Spread result() { return std::move(spread_); }

 private:
  void measure_tile(std::size_t at, std::size_t count, const std::vector<ColumnTile>& columns) {
    high_.assign(count, -std::numeric_limits<double>::infinity());
    low_.assign(count, std::numeric_limits<double>::infinity());
    bool all_known = true;
    for (const ColumnTile& column : columns) {
      if (column.known == nullptr) {
        for (std::size_t r = 0; r < count; ++r) {
          high_[r] = std::max(high_[r], column.celsius[r]);
          low_[r] = std::min(low_[r], column.celsius[r]);
        }
        continue;
      }
      all_known = false;
      for (std::size_t r = 0; r < count; ++r) {
        if (column.known[r] == 0) continue;
        high_[r] = std::max(high_[r], column.celsius[r]);
        low_[r] = std::min(low_[r], column.celsius[r]);
      }
    }
    for (std::size_t r = 0; r < count; ++r) {
      if (high_[r] < low_[r]) continue;
      if (asked_.above_c && high_[r] < *asked_.above_c - kTemperatureSlack) {
        place_open_ = false;
        continue;
      }
      const double bound = high_[r] - low_[r];
      const bool could_lead = !spread_.widest || bound > spread_.widest->kelvin + kSameSpread_k;
      const bool could_be_wide = asked_.limit_k && bound > *asked_.limit_k + kTemperatureSlack;
      if (!could_lead && !could_be_wide) {
        place_open_ = false;
        continue;
      }
      if (!all_known && !enough_known(columns, r)) {
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
    const auto known = [&](std::size_t m) { return columns[m].known == nullptr || columns[m].known[r] != 0; };
    const auto try_pair = [&](std::size_t hot, std::size_t cold) {
      const double difference = columns[hot].celsius[r] - columns[cold].celsius[r];
      if (best && difference <= best->kelvin + kSameSpread_k) return;
      best = MeasuredSpread{record_.times_s[row], difference, group_[hot], group_[cold]};
    };
    if (asked_.within_m) {
      for (std::size_t hot = 0; hot < columns.size(); ++hot)
        for (std::size_t cold = 0; known(hot) && cold < columns.size(); ++cold)
          if (cold != hot && known(cold) &&
              std::fabs(places_m_[hot] - places_m_[cold]) <= *asked_.within_m + kPlaceSlack_m)
            try_pair(hot, cold);
    } else {
      std::size_t hot = columns.size();
      std::size_t cold = columns.size();
      for (std::size_t m = 0; m < columns.size(); ++m) {
        if (!known(m)) continue;
        if (hot == columns.size() || columns[m].celsius[r] > columns[hot].celsius[r]) hot = m;
        if (cold == columns.size() || columns[m].celsius[r] < columns[cold].celsius[r]) cold = m;
      }
      if (hot < columns.size()) try_pair(hot, cold);
    }
    if (best) best->kelvin = exact(row, *best);
    return best;
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
    if (!spread_.widest || measured->kelvin > spread_.widest->kelvin + kSameSpread_k)
      spread_.widest = measured;
    if (!asked_.limit_k || measured->kelvin <= *asked_.limit_k + kTemperatureSlack) {
      place_open_ = false;
      return;
    }
    if (!place_open_) spread_.places.push_back({{measured->at_s, measured->at_s}, *measured});
    place_open_ = true;
    WideTime& place = spread_.places.back();
    place.time.second = measured->at_s;
    if (measured->kelvin > place.widest.kelvin + kSameSpread_k) place.widest = *measured;
  }

  const Record& record_;
  const TraceSet& set_;
  Group group_;
  const SpreadAsked& asked_;
  RowValues rows_;
  std::vector<double> places_m_;
  std::vector<double> high_, low_;
  Spread spread_;
  bool place_open_ = false;
  std::size_t next_row_ = 0;
};

}  // namespace

Spread measure_spread(const Record& record, const TraceSet& set, Group group, const std::vector<Span>& times,
                      const SpreadAsked& asked) {
  SpreadMeter meter(record, set, group, asked);
  for (const Span& time : times) meter.add(time);
  return meter.result();
}

}  // namespace soakwright
