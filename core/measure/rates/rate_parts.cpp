// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/rates/rate_parts.h"

#include <algorithm>
#include <limits>
#include <tuple>

namespace soakwright {
namespace {

constexpr double kNoEdge = std::numeric_limits<double>::infinity();

/// What is no longer is a touch and no part.
constexpr double kTouch_s = 1e-7;

/// A time of one piece.
struct PieceTime {
  Span time;
  std::size_t piece = 0;
};

/// Where the channel is within the range of a hold in that hold's period.
std::vector<PieceTime> held_times(const std::vector<HoldCourse>& holds, std::size_t member,
                                  const Span& when) {
  std::vector<PieceTime> held;
  for (const HoldCourse& hold : holds) {
    if (!hold.period) continue;
    const Span period{std::max(hold.period->first, when.first), std::min(hold.period->second, when.second)};
    if (period.second <= period.first) continue;
    for (const RangeSpan& span : hold.range.channels[member]) {
      if (span.state != RangeState::in) continue;
      const Span time{std::max(span.from, period.first), std::min(span.to, period.second)};
      if (time.second > time.first) held.push_back({time, span.piece});
    }
  }
  std::sort(held.begin(), held.end(),
            [](const PieceTime& a, const PieceTime& b) { return a.time.first < b.time.first; });
  return held;
}

/// The times between `above` and `below` within `when`, with what their ends are.
std::vector<RatePart> between_limits(const Trace& trace, const Span& when, const RampStage& stage) {
  std::vector<RatePart> parts;
  const std::vector<RangeSpan> spans = range_spans(trace, stage.above ? stage.above->celsius() : -kNoEdge,
                                                   stage.below ? stage.below->celsius() : kNoEdge);
  for (std::size_t i = 0; i < spans.size(); ++i) {
    if (spans[i].state != RangeState::in) continue;
    RatePart part;
    part.time = {std::max(spans[i].from, when.first), std::min(spans[i].to, when.second)};
    if (part.time.second <= part.time.first) continue;
    part.piece = spans[i].piece;
    const auto crossing = [&](std::size_t beside, double edge, double own_edge) {
      if (beside >= spans.size() || spans[beside].piece != part.piece || edge != own_edge)
        return RatePart::End::other;
      return spans[beside].state == RangeState::below ? RatePart::End::above : RatePart::End::below;
    };
    if (i > 0) part.starts_at = crossing(i - 1, spans[i].from, part.time.first);
    part.ends_at = crossing(i + 1, spans[i].to, part.time.second);
    parts.push_back(part);
  }
  return parts;
}

/// What is left of the parts without the times in which the channel is held; both in time order.
std::vector<RatePart> without(const std::vector<RatePart>& parts, const std::vector<PieceTime>& held) {
  if (held.empty()) return parts;
  std::vector<RatePart> left;
  std::size_t next = 0;
  for (RatePart part : parts) {
    while (next < held.size() && held[next].time.second <= part.time.first) ++next;
    for (std::size_t i = next; i < held.size() && held[i].time.first < part.time.second; ++i) {
      if (held[i].piece != part.piece || held[i].time.second <= part.time.first) continue;
      RatePart before = part;
      before.time.second = held[i].time.first;
      before.ends_at = RatePart::End::other;
      if (before.time.second > before.time.first) left.push_back(before);
      part.time.first = held[i].time.second;
      part.starts_at = RatePart::End::other;
    }
    if (part.time.second > part.time.first) left.push_back(part);
  }
  return left;
}

std::vector<RatePart> joined(const std::vector<RatePart>& parts, double in_range_min_s) {
  std::vector<RatePart> all;
  for (const RatePart& part : parts) {
    if (part.time.second - part.time.first <= kTouch_s) continue;
    if (!all.empty() && all.back().piece == part.piece &&
        part.time.first - all.back().time.second <= in_range_min_s + kWindowSlack_s) {
      all.back().time.second = part.time.second;
      all.back().ends_at = part.ends_at;
    } else {
      all.push_back(part);
    }
  }
  return all;
}

/// The time beside the hold of this channel. Below its first rise through `above` there is no part anyway;
/// one that begins the record at or above `above` is in an earlier cooling until that rise.
std::optional<Span> beside_hold_of(const Trace& trace, const StageTime& when, const RampStage& stage) {
  if (!when.beside_hold) return std::nullopt;
  Span time = when.beside_hold->time;
  if (when.beside_hold->from_first_rise && stage.above && !trace.pieces.empty()) {
    const Piece& piece = trace.pieces.front();
    const TraceSource& source = trace.sources[piece.source];
    const bool starts_hot = source.c[piece.lead] >= stage.above->celsius() - kTemperatureSlack;
    const auto rise =
        starts_hot ? first_rise_through(trace, stage.above->celsius(), piece.from) : std::nullopt;
    if (rise) time.first = *rise;
  }
  return time.second > time.first ? std::optional{time} : std::nullopt;
}

}  // namespace

std::vector<RatePart> rate_parts(const TraceSet& set, Group group, std::size_t member,
                                 const std::vector<HoldCourse>& holds, const StageTime& when,
                                 const RampStage& stage, double in_range_min_s) {
  const Trace& trace = set.traces[group[member]];
  const auto within = [&](const Span& time, bool beside_hold) {
    std::vector<RatePart> parts =
        joined(without(between_limits(trace, time, stage), held_times(holds, member, time)), in_range_min_s);
    for (RatePart& part : parts) {
      part.beside_hold = beside_hold;
      const Piece& piece = trace.pieces[part.piece];
      std::tie(part.first, part.end) =
          samples_within(trace.sources[piece.source], piece, part.time.first, part.time.second);
    }
    return parts;
  };
  std::vector<RatePart> parts = within(when.time, false);
  if (const auto beside = beside_hold_of(trace, when, stage)) {
    const std::vector<RatePart> more = within(*beside, true);
    const bool heat = stage.direction == RampStage::Direction::heat;
    parts.insert(heat ? parts.end() : parts.begin(), more.begin(), more.end());
  }
  return parts;
}

}  // namespace soakwright
