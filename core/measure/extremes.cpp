#include "core/measure/extremes.h"

#include <algorithm>
#include <limits>

namespace soakwright {
namespace {

/// Calls visit(t, c, leg) for the readings of a trace that belong to `time`, but for those of whole blocks
/// (of Leg::kBlock readings) for which pass_over(leg, block) is true.
template <typename PassOver, typename Visit>
void visit_readings(const Trace& trace, const Span& time, PassOver&& pass_over, Visit&& visit) {
  for (const Piece& piece : trace.pieces) {
    const Leg& leg = trace.legs[piece.leg];
    const auto [first, end] = samples_within(leg, piece, time.first, time.second);
    for (std::size_t i = first; i < end;) {
      if (i % Leg::kBlock == 0 && i + Leg::kBlock <= end && pass_over(leg, i / Leg::kBlock)) {
        i += Leg::kBlock;
        continue;
      }
      const std::size_t stop = std::min(end, (i / Leg::kBlock + 1) * Leg::kBlock);
      for (; i < stop; ++i) visit(leg.t[i], leg.c[i], piece.leg);
    }
  }
}

/// The best that a block has, by Better.
template <typename Better>
double best_of_block(const Leg& leg, std::size_t block, Better better) {
  const double low = leg.block_low[block];
  const double high = leg.block_high[block];
  return better(high, low) ? high : low;
}

template <typename Better>
std::optional<ReadingAt> best_reading(const TraceSet& set, Group group, const Span& time, Better better) {
  std::optional<ReadingAt> best;
  for (const std::size_t index : group)
    visit_readings(
        set.traces[index], time,
        [&](const Leg& leg, std::size_t block) {
          if (!best) return false;
          const double there = best_of_block(leg, block, better);
          return better(best->celsius, there) ||
                 (there == best->celsius && leg.t[block * Leg::kBlock] >= best->at_s);
        },
        [&](double t, double c, std::size_t leg) {
          if (!best || better(c, best->celsius) || (c == best->celsius && t < best->at_s))
            best = ReadingAt{index, t, c, leg};
        });
  return best;
}

template <typename Better>
std::vector<ReadingAt> best_of_each(const TraceSet& set, Group group, const Span& time, Better better) {
  std::vector<ReadingAt> all;
  for (const std::size_t index : group) {
    const Trace& trace = set.traces[index];
    std::vector<std::optional<ReadingAt>> best(trace.legs.size());
    visit_readings(
        trace, time,
        [&](const Leg& leg, std::size_t block) {
          const auto& own = best[static_cast<std::size_t>(&leg - trace.legs.data())];
          return own && !better(best_of_block(leg, block, better), own->celsius);
        },
        [&](double t, double c, std::size_t leg) {
          if (!best[leg] || better(c, best[leg]->celsius)) best[leg] = ReadingAt{index, t, c, leg};
        });
    for (const auto& one : best)
      if (one) all.push_back(*one);
  }
  return all;
}

}  // namespace

std::optional<ReadingAt> highest_reading(const TraceSet& set, Group group, Span time) {
  return best_reading(set, group, time, [](double a, double b) { return a > b; });
}

std::optional<ReadingAt> lowest_reading(const TraceSet& set, Group group, Span time) {
  return best_reading(set, group, time, [](double a, double b) { return a < b; });
}

std::vector<ReadingAt> highest_of_each(const TraceSet& set, Group group, Span time) {
  return best_of_each(set, group, time, [](double a, double b) { return a > b; });
}

std::vector<ReadingAt> lowest_of_each(const TraceSet& set, Group group, Span time) {
  return best_of_each(set, group, time, [](double a, double b) { return a < b; });
}

std::vector<HotPlace> places_above(const TraceSet& set, Group group, Span time, double level_c) {
  std::vector<HotPlace> places;
  for (const std::size_t index : group) {
    const std::vector<HotPlace> own = places_above(set, index, time, {level_c});
    places.insert(places.end(), own.begin(), own.end());
  }
  return places;
}

std::vector<HotPlace> places_above(const TraceSet& set, std::size_t trace, Span time,
                                   const std::vector<double>& levels_c) {
  std::vector<HotPlace> places;
  LegBands bands;
  for (const double level : levels_c) bands.push_back({-std::numeric_limits<double>::infinity(), level});
  for (const BandSpan& span : band_spans(set.traces[trace], bands)) {
    if (span.state != BandState::above || span.to < time.first || span.from > time.second) continue;
    const Span part{std::max(span.from, time.first), std::min(span.to, time.second)};
    const std::size_t only[] = {trace};
    const auto hottest = highest_reading(set, only, part);
    if (!hottest) continue;
    const double level = levels_c[hottest->leg < levels_c.size() ? hottest->leg : levels_c.size() - 1];
    if (hottest->celsius > level + kTemperatureSlack) places.push_back({part, *hottest});
  }
  return places;
}

std::optional<ReadingSummary> summary_of(const Trace& trace, const std::vector<Span>& times) {
  ReadingSummary summary{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity(),
                         0.0};
  std::size_t count = 0;
  const auto add = [&](double low, double high, double sum, std::size_t readings) {
    summary.min_c = std::min(summary.min_c, low);
    summary.max_c = std::max(summary.max_c, high);
    summary.mean_c += sum;
    count += readings;
  };
  for (const Span& time : times)
    visit_readings(
        trace, time,
        [&](const Leg& leg, std::size_t block) {
          add(leg.block_low[block], leg.block_high[block], leg.block_sum[block], Leg::kBlock);
          return true;
        },
        [&](double, double c, std::size_t) { add(c, c, c, 1); });
  if (count == 0) return std::nullopt;
  summary.mean_c /= static_cast<double>(count);
  return summary;
}

}  // namespace soakwright
