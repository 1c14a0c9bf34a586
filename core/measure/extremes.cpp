#include "core/measure/extremes.h"

#include <algorithm>
#include <limits>

namespace soakwright {
namespace {

/// Calls visit(t, c, leg) for the readings of a trace that belong to `time`.
template <typename Visit>
void visit_readings(const Trace& trace, const Span& time, Visit&& visit) {
  for (const Piece& piece : trace.pieces) {
    const Leg& leg = trace.legs[piece.leg];
    const auto [first, end] = samples_within(leg, piece, time.first, time.second);
    for (std::size_t i = first; i < end; ++i) visit(leg.t[i], leg.c[i], piece.leg);
  }
}

template <typename Better>
std::optional<ReadingAt> best_reading(const TraceSet& set, Group group, const Span& time, Better better) {
  std::optional<ReadingAt> best;
  for (const std::size_t index : group)
    visit_readings(set.traces[index], time, [&](double t, double c, std::size_t leg) {
      if (!best || better(c, best->celsius) || (c == best->celsius && t < best->at_s))
        best = ReadingAt{index, t, c, leg};
    });
  return best;
}

template <typename Better>
std::vector<ReadingAt> best_of_each(const TraceSet& set, Group group, const Span& time, Better better) {
  std::vector<ReadingAt> all;
  for (const std::size_t index : group) {
    std::vector<std::optional<ReadingAt>> best(set.traces[index].legs.size());
    visit_readings(set.traces[index], time, [&](double t, double c, std::size_t leg) {
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
  for (const Span& time : times)
    visit_readings(trace, time, [&](double, double c, std::size_t) {
      summary.min_c = std::min(summary.min_c, c);
      summary.max_c = std::max(summary.max_c, c);
      summary.mean_c += c;
      ++count;
    });
  if (count == 0) return std::nullopt;
  summary.mean_c /= static_cast<double>(count);
  return summary;
}

}  // namespace soakwright
