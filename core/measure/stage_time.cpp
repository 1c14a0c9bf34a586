#include "core/measure/stage_time.h"

#include <algorithm>

namespace soakwright {
namespace {

/// The reading at the end of the last known piece that ends at or before `t`, and the one at the start of the
/// next.
std::optional<double> edge_before(const Trace& trace, double t) {
  const Piece* last = nullptr;
  for (const Piece& piece : trace.pieces)
    if (piece.to <= t + kWindowSlack_s) last = &piece;
  if (last == nullptr || last->to < t - kWindowSlack_s) return std::nullopt;
  return temperature_at(trace, last->to);
}

std::optional<double> edge_after(const Trace& trace, double t) {
  for (const Piece& piece : trace.pieces)
    if (piece.from >= t - kWindowSlack_s) {
      if (piece.from > t + kWindowSlack_s) return std::nullopt;
      const TraceSource& source = trace.sources[piece.source];
      return source.t[piece.lead] == piece.from ? source.c[piece.lead]
                                                : on_line(source, piece.lead, piece.from);
    }
  return std::nullopt;
}

/// Takes the holds' spans out of a time.
std::vector<Span> outside_holds(Span time, const std::vector<HoldCourse>& holds) {
  std::vector<Span> left{time};
  for (const HoldCourse& hold : holds) {
    if (!hold.period) continue;
    std::vector<Span> next;
    for (const Span& part : left) {
      if (hold.period->first > part.first)
        next.emplace_back(part.first, std::min(part.second, hold.period->first));
      if (hold.period->second < part.second)
        next.emplace_back(std::max(part.first, hold.period->second), part.second);
    }
    left = std::move(next);
  }
  std::erase_if(left, [](const Span& part) { return part.second - part.first <= kWindowSlack_s; });
  return left;
}

/// Both ends of a hole lie on one side of above…below, outside it.
bool known_outside(std::optional<double> a, std::optional<double> b, const RampStage& stage) {
  if (!a || !b) return false;
  const auto below = [&](double c) { return stage.above && c < stage.above->celsius() - kTemperatureSlack; };
  const auto beyond = [&](double c) { return stage.below && c > stage.below->celsius() + kTemperatureSlack; };
  return (below(*a) && below(*b)) || (beyond(*a) && beyond(*b));
}

struct Reading {
  double t = 0.0;
  double c = 0.0;
};

std::optional<Reading> first_reading(const Trace& trace) {
  for (const Piece& piece : trace.pieces)
    if (piece.first < piece.end)
      return Reading{trace.sources[piece.source].t[piece.first], trace.sources[piece.source].c[piece.first]};
  return std::nullopt;
}

std::optional<Reading> last_reading(const Trace& trace) {
  for (auto piece = trace.pieces.rbegin(); piece != trace.pieces.rend(); ++piece)
    if (piece->first < piece->end)
      return Reading{trace.sources[piece->source].t[piece->end - 1],
                     trace.sources[piece->source].c[piece->end - 1]};
  return std::nullopt;
}

}  // namespace

StageTime stage_time(const std::vector<HoldCourse>& holds, std::size_t stage, RampStage::Direction direction,
                     Span record) {
  StageTime when;
  for (const HoldCourse& hold : holds) {
    if (!hold.continuous) continue;
    if (hold.stage < stage) when.hold_before = &hold;
    if (hold.stage > stage && when.hold_after == nullptr) when.hold_after = &hold;
  }
  const bool heat = direction == RampStage::Direction::heat;
  const Span* before = when.hold_before != nullptr ? &*when.hold_before->period : nullptr;
  const Span* after = when.hold_after != nullptr ? &*when.hold_after->period : nullptr;
  when.time = {before == nullptr ? record.first
               : heat            ? before->second
                                 : before->first,
               after == nullptr ? record.second
               : heat           ? after->second
                                : after->first};
  when.spread_time = {before == nullptr ? record.first : before->second,
                      after == nullptr ? record.second : after->first};
  return when;
}

std::vector<BlindSpot> blind_spots(const TraceSet& set, Group group, const std::vector<HoldCourse>& holds,
                                   const StageTime& when, const RampStage& stage) {
  std::vector<BlindSpot> spots;
  const bool heat = stage.direction == RampStage::Direction::heat;
  const std::vector<Span> outside = outside_holds(when.time, holds);
  for (const std::size_t index : group) {
    const Trace& trace = set.traces[index];
    if (stage.above) {
      const double edge = stage.above->celsius() - kTemperatureSlack;
      if (heat && when.hold_before == nullptr && !trace.excluded_from_start)
        if (const auto first = first_reading(trace); first && first->c >= edge)
          spots.push_back({BlindSpot::Reason::starts_above, index, {first->t, first->t}, first->c});
      if (!heat && when.hold_after == nullptr && !trace.excluded_to_end)
        if (const auto last = last_reading(trace); last && last->c >= edge)
          spots.push_back({BlindSpot::Reason::ends_above, index, {last->t, last->t}, last->c});
    }
    // Before a channel's first reading in a stage that begins with the record that reading alone speaks, and
    // behind its last one in a stage that ends with it.
    const auto first = first_reading(trace);
    const auto last = last_reading(trace);
    const bool first_speaks = heat && stage.above && when.hold_before == nullptr && first;
    const bool last_speaks = !heat && stage.above && when.hold_after == nullptr && last;
    for (const Span& hole : unknown_spans(trace, when.time.first, when.time.second)) {
      if (first_speaks && hole.second <= first->t + kWindowSlack_s) continue;
      if (last_speaks && hole.first >= last->t - kWindowSlack_s) continue;
      const bool touches = std::any_of(outside.begin(), outside.end(), [&](const Span& part) {
        return std::min(part.second, hole.second) - std::max(part.first, hole.first) > kWindowSlack_s;
      });
      if (!touches) continue;
      // The hole itself may reach beyond the stage: its ends are those of the whole of it.
      const std::vector<Span> whole = unknown_spans(trace, -1e18, 1e18);
      const auto around = std::find_if(whole.begin(), whole.end(), [&](const Span& span) {
        return span.first <= hole.first + kWindowSlack_s && span.second >= hole.second - kWindowSlack_s;
      });
      const Span ends = around != whole.end() ? *around : hole;
      if (known_outside(edge_before(trace, ends.first), edge_after(trace, ends.second), stage)) continue;
      spots.push_back({BlindSpot::Reason::hole, index, hole, std::nullopt});
    }
  }
  return spots;
}

}  // namespace soakwright
