#include "core/measure/extremes.h"

#include <algorithm>
#include <limits>

namespace soakwright {
namespace {

/// Calls visit(t, c) for the readings of a trace that belong to `time`.
template <typename Visit>
void visit_readings(const Trace& trace, const Span& time, Visit&& visit) {
  for (const Piece& piece : trace.pieces) {
    const Leg& leg = trace.legs[piece.leg];
    const auto [first, end] = samples_within(leg, piece, time.first, time.second);
    for (std::size_t i = first; i < end; ++i) visit(leg.t[i], leg.c[i]);
  }
}

template <typename Better>
std::optional<ReadingAt> best_reading(const TraceSet& set, Group group, const Span& time, Better better) {
  std::optional<ReadingAt> best;
  for (const std::size_t index : group)
    visit_readings(set.traces[index], time, [&](double t, double c) {
      if (!best || better(c, best->celsius) || (c == best->celsius && t < best->at_s))
        best = ReadingAt{index, t, c};
    });
  return best;
}

}  // namespace

std::optional<ReadingAt> highest_reading(const TraceSet& set, Group group, Span time) {
  return best_reading(set, group, time, [](double a, double b) { return a > b; });
}

std::optional<ReadingAt> lowest_reading(const TraceSet& set, Group group, Span time) {
  return best_reading(set, group, time, [](double a, double b) { return a < b; });
}

std::vector<HotPlace> places_above(const TraceSet& set, Group group, Span time, double level_c) {
  std::vector<HotPlace> places;
  for (const std::size_t index : group) {
    const Trace& trace = set.traces[index];
    for (const BandSpan& span : band_spans(trace, -std::numeric_limits<double>::infinity(), level_c)) {
      if (span.state != BandState::above || span.to < time.first || span.from > time.second) continue;
      const Span part{std::max(span.from, time.first), std::min(span.to, time.second)};
      const std::size_t only[] = {index};
      if (const auto hottest = highest_reading(set, only, part);
          hottest && hottest->celsius > level_c + kTemperatureSlack)
        places.push_back({part, *hottest});
    }
  }
  return places;
}

std::optional<ReadingSummary> summary_of(const Trace& trace, const std::vector<Span>& times) {
  ReadingSummary summary{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity(),
                         0.0};
  std::size_t count = 0;
  for (const Span& time : times)
    visit_readings(trace, time, [&](double, double c) {
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
