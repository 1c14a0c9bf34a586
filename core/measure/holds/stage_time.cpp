// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/holds/stage_time.h"

#include <algorithm>

namespace soakwright {
namespace {

/// Beyond every record's ends.
constexpr double kForEver = 1e18;

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

/// The temperatures at the ends of unknown time, none for one without a reading; the record's ends are no
/// ends.
std::vector<std::optional<double>> ends_of_hole(const Trace& trace, const Span& hole) {
  std::vector<std::optional<double>> ends;
  if (hole.first > -kForEver) ends.push_back(edge_before(trace, hole.first));
  if (hole.second < kForEver) ends.push_back(edge_after(trace, hole.second));
  return ends;
}

/// Takes the hold periods out of a time.
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

/// What is known at the ends of unknown time is on one side of above…below, outside it. At the record's ends
/// there is one end only.
bool known_outside(const std::vector<std::optional<double>>& ends, const RampStage& stage) {
  const auto all = [&](auto lies_outside) {
    return !ends.empty() && std::all_of(ends.begin(), ends.end(), [&](const std::optional<double>& end) {
      return end && lies_outside(*end);
    });
  };
  return (stage.above && all([&](double c) { return c < stage.above->celsius() - kTemperatureSlack; })) ||
         (stage.below && all([&](double c) { return c > stage.below->celsius() + kTemperatureSlack; }));
}

struct EndReading {
  double t = 0.0;
  double c = 0.0;
};

std::optional<EndReading> first_reading(const Trace& trace) {
  for (const Piece& piece : trace.pieces)
    if (piece.first < piece.end)
      return EndReading{trace.sources[piece.source].t[piece.first],
                        trace.sources[piece.source].c[piece.first]};
  return std::nullopt;
}

std::optional<EndReading> last_reading(const Trace& trace) {
  for (auto piece = trace.pieces.rbegin(); piece != trace.pieces.rend(); ++piece)
    if (piece->first < piece->end)
      return EndReading{trace.sources[piece->source].t[piece->end - 1],
                        trace.sources[piece->source].c[piece->end - 1]};
  return std::nullopt;
}

bool is_ramp(const Stage& stage, RampStage::Direction direction) {
  const auto* ramp = std::get_if<RampStage>(&stage.specified);
  return ramp != nullptr && ramp->direction == direction;
}

/// The first ramp of the direction after stage `from` and before stage `to`, and the last one.
std::optional<std::size_t> first_ramp(const std::vector<Stage>& stages, std::size_t from, std::size_t to,
                                      RampStage::Direction direction) {
  for (std::size_t i = from + 1; i < to; ++i)
    if (is_ramp(stages[i], direction)) return i;
  return std::nullopt;
}
std::optional<std::size_t> last_ramp(const std::vector<Stage>& stages, std::size_t to,
                                     RampStage::Direction direction) {
  for (std::size_t i = to; i > 0; --i)
    if (is_ramp(stages[i - 1], direction)) return i - 1;
  return std::nullopt;
}

/// The stage's own time, and the holds that bound it.
StageTime own_time(const std::vector<HoldCourse>& holds, std::size_t stage, RampStage::Direction direction,
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

}  // namespace

StageTime stage_time(const std::vector<HoldCourse>& holds, const std::vector<Stage>& stages,
                     std::size_t stage, RampStage::Direction direction, Span record) {
  StageTime when = own_time(holds, stage, direction, record);
  BesideHold beside;
  if (direction == RampStage::Direction::heat) {
    const HoldCourse* hold = when.hold_after;
    if (hold == nullptr || first_ramp(stages, stage, hold->stage, direction)) return when;
    const auto next = first_ramp(stages, hold->stage, stages.size(), direction);
    beside.time = {hold->period->second,
                   next ? own_time(holds, *next, direction, record).time.first : record.second};
  } else {
    const HoldCourse* hold = when.hold_before;
    if (hold == nullptr || first_ramp(stages, hold->stage, stage, direction)) return when;
    const auto previous = last_ramp(stages, hold->stage, direction);
    beside.time = {previous ? own_time(holds, *previous, direction, record).time.second : record.first,
                   hold->period->first};
    beside.from_first_rise = !previous;
  }
  if (beside.time.second - beside.time.first > kWindowSlack_s) when.beside_hold = beside;
  return when;
}

std::vector<BlindSpot> blind_spots(const TraceSet& set, Group group, const std::vector<HoldCourse>& holds,
                                   const StageTime& when, const RampStage& stage) {
  std::vector<BlindSpot> spots;
  const bool heat = stage.direction == RampStage::Direction::heat;
  const std::vector<Span> outside = outside_holds(when.time, holds);
  for (const std::size_t index : group) {
    const Trace& trace = set.traces[index];
    const auto first = first_reading(trace);
    const auto last = last_reading(trace);
    const auto hot = [&](const std::optional<EndReading>& reading) {
      return stage.above && reading && reading->c >= stage.above->celsius() - kTemperatureSlack;
    };
    const bool starts_above = heat && when.hold_before == nullptr && hot(first) && !trace.excluded_from_start;
    const bool ends_above = !heat && when.hold_after == nullptr && hot(last) && !trace.excluded_to_end;
    if (starts_above)
      spots.push_back({BlindSpot::Reason::starts_above, index, {first->t, first->t}, first->c});
    if (ends_above) spots.push_back({BlindSpot::Reason::ends_above, index, {last->t, last->t}, last->c});
    // Unknown time may reach beyond the stage: its ends are those of the whole of it.
    const std::vector<Span> whole = unknown_spans(trace, -kForEver, kForEver);
    for (const Span& hole : unknown_spans(trace, when.time.first, when.time.second)) {
      if (starts_above && hole.second <= first->t + kWindowSlack_s) continue;
      if (ends_above && hole.first >= last->t - kWindowSlack_s) continue;
      const bool touches = std::any_of(outside.begin(), outside.end(), [&](const Span& part) {
        return std::min(part.second, hole.second) - std::max(part.first, hole.first) > kWindowSlack_s;
      });
      if (!touches) continue;
      const auto around = std::find_if(whole.begin(), whole.end(), [&](const Span& span) {
        return span.first <= hole.first + kWindowSlack_s && span.second >= hole.second - kWindowSlack_s;
      });
      if (known_outside(ends_of_hole(trace, around != whole.end() ? *around : hole), stage)) continue;
      spots.push_back({BlindSpot::Reason::hole, index, hole, std::nullopt});
    }
  }
  return spots;
}

}  // namespace soakwright
