// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/extremes.h"

#include <algorithm>
#include <limits>

namespace soakwright {
namespace {

/// Calls visit(t, c, source) for the readings of a trace that belong to `time`, but for those of whole blocks
/// (of TraceSource::kBlock readings) for which pass_over(source, block) is true.
template <typename PassOver, typename Visit>
void visit_readings(const Trace& trace, const Span& time, PassOver&& pass_over, Visit&& visit) {
  for (const Piece& piece : trace.pieces) {
    const TraceSource& source = trace.sources[piece.source];
    const auto [first, end] = samples_within(source, piece, time.first, time.second);
    for (std::size_t i = first; i < end;) {
      if (i % TraceSource::kBlock == 0 && i + TraceSource::kBlock <= end &&
          pass_over(source, i / TraceSource::kBlock)) {
        i += TraceSource::kBlock;
        continue;
      }
      const std::size_t stop = std::min(end, (i / TraceSource::kBlock + 1) * TraceSource::kBlock);
      for (; i < stop; ++i) visit(source.t[i], source.c[i], piece.source);
    }
  }
}

/// The best that a block has, by Better.
template <typename Better>
double best_of_block(const TraceSource& source, std::size_t block, Better better) {
  const double low = source.block_low[block];
  const double high = source.block_high[block];
  return better(high, low) ? high : low;
}

template <typename Better>
std::optional<ReadingAt> best_reading(const TraceSet& set, Group group, const Span& time, Better better) {
  std::optional<ReadingAt> best;
  for (const std::size_t index : group)
    visit_readings(
        set.traces[index], time,
        [&](const TraceSource& source, std::size_t block) {
          if (!best) return false;
          const double there = best_of_block(source, block, better);
          return better(best->celsius, there) ||
                 (there == best->celsius && source.t[block * TraceSource::kBlock] >= best->at_s);
        },
        [&](double t, double c, std::size_t source) {
          if (!best || better(c, best->celsius) || (c == best->celsius && t < best->at_s))
            best = ReadingAt{index, t, c, source};
        });
  return best;
}

template <typename Better>
std::vector<ReadingAt> best_of_each(const TraceSet& set, Group group, const Span& time, Better better) {
  std::vector<ReadingAt> all;
  for (const std::size_t index : group) {
    const Trace& trace = set.traces[index];
    std::vector<std::optional<ReadingAt>> best(trace.sources.size());
    visit_readings(
        trace, time,
        [&](const TraceSource& source, std::size_t block) {
          const auto& own = best[static_cast<std::size_t>(&source - trace.sources.data())];
          return own && !better(best_of_block(source, block, better), own->celsius);
        },
        [&](double t, double c, std::size_t source) {
          if (!best[source] || better(c, best[source]->celsius))
            best[source] = ReadingAt{index, t, c, source};
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
  SourceRanges ranges;
  for (const double level : levels_c) ranges.push_back({-std::numeric_limits<double>::infinity(), level});
  for (const RangeSpan& span : range_spans(set.traces[trace], ranges)) {
    if (span.state != RangeState::above || span.to < time.first || span.from > time.second) continue;
    const Span part{std::max(span.from, time.first), std::min(span.to, time.second)};
    const std::size_t only[] = {trace};
    const auto hottest = highest_reading(set, only, part);
    if (!hottest) continue;
    const double level = levels_c[hottest->source < levels_c.size() ? hottest->source : levels_c.size() - 1];
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
        [&](const TraceSource& source, std::size_t block) {
          add(source.block_low[block], source.block_high[block], source.block_sum[block],
              TraceSource::kBlock);
          return true;
        },
        [&](double, double c, std::size_t) { add(c, c, c, 1); });
  if (count == 0) return std::nullopt;
  summary.mean_c /= static_cast<double>(count);
  return summary;
}

}  // namespace soakwright
