// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/tempering.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/measure/gathered_tempering.h"
#include "core/system/parallel_for.h"

namespace soakwright {
namespace {

/// The known steps of a trace, one after the other.
class Steps {
 public:
  explicit Steps(const Trace& trace) : trace_(trace) { enter(0); }

  struct Step {
    double celsius, seconds;  ///< the mean of its two ends
    double to_s;
    std::size_t source;
  };
  /// False at the end.
  bool next(Step& step) {
    while (piece_ < trace_.pieces.size()) {
      const Piece& piece = trace_.pieces[piece_];
      const TraceSource& source = trace_.sources[piece.source];
      for (; sample_ + 1 < piece.trail;) {
        const std::size_t i = sample_++;
        const double from = std::max(source.t[i], piece.from);
        const double to = std::min(source.t[i + 1], piece.to);
        if (to <= from) continue;
        const bool whole = from == source.t[i] && to == source.t[i + 1];
        step = {whole ? (source.c[i] + source.c[i + 1]) / 2.0
                      : (on_line(source, i, from) + on_line(source, i, to)) / 2.0,
                to - from, to, piece.source};
        return true;
      }
      enter(piece_ + 1);
    }
    return false;
  }

 private:
  void enter(std::size_t piece) {
    piece_ = piece;
    if (piece < trace_.pieces.size()) sample_ = trace_.pieces[piece].lead;
  }

  const Trace& trace_;
  std::size_t piece_ = 0;
  std::size_t sample_ = 0;
};

std::optional<Tempering> tempering_with(const GatheredTempering& gathered, const Trace& trace, Span record) {
  const auto parameter = gathered.parameter();
  if (!parameter) return std::nullopt;
  Tempering tempering{*parameter, 0.0};
  for (const Span& span : unknown_spans(trace, record.first, record.second))
    tempering.unknown_s += span.second - span.first;
  return tempering;
}

GatheredTempering gathered_over(const Trace& trace) {
  GatheredTempering gathered;
  Steps steps(trace);
  for (Steps::Step step{}; steps.next(step);) gathered.add(step.celsius, step.seconds);
  return gathered;
}

/// Whether lines through all its readings, and no others, make the trace.
bool known_throughout(const Trace& trace) {
  if (trace.sources.size() != 1 || trace.pieces.size() != 1) return false;
  const TraceSource& source = trace.sources.front();
  const Piece& piece = trace.pieces.front();
  return source.own_t.empty() && piece.lead == 0 && piece.trail == source.c.size() &&
         piece.from == source.t.front() && piece.to == source.t.back();
}

}  // namespace

std::vector<std::optional<Tempering>> temperings_of(const std::vector<Trace>& traces, Span record) {
  std::vector<std::optional<Tempering>> all(traces.size());
  // Known throughout: all have the readings of all rows, and so the same times.
  std::vector<std::size_t> in_lanes;
  std::vector<std::size_t> alone;
  for (std::size_t i = 0; i < traces.size(); ++i)
    (known_throughout(traces[i]) ? in_lanes : alone).push_back(i);
  const std::size_t lots = (in_lanes.size() + kTemperingLanes - 1) / kTemperingLanes;
  parallel_for(lots + alone.size(), [&](std::size_t part) {
    if (part >= lots) {
      const std::size_t i = alone[part - lots];
      all[i] = tempering_with(gathered_over(traces[i]), traces[i], record);
      return;
    }
    const std::size_t first = part * kTemperingLanes;
    const std::size_t count = std::min(in_lanes.size() - first, kTemperingLanes);
    std::array<const double*, kTemperingLanes> celsius{};
    for (std::size_t k = 0; k < kTemperingLanes; ++k)  // lanes of no trace repeat the last
      celsius[k] = traces[in_lanes[first + std::min(k, count - 1)]].sources.front().c.data();
    const auto gathered = gather_lanes(traces[in_lanes[first]].sources.front().t, celsius);
    for (std::size_t k = 0; k < count; ++k)
      all[in_lanes[first + k]] = tempering_with(gathered[k], traces[in_lanes[first + k]], record);
  });
  return all;
}

std::optional<Tempering> tempering_over(const std::vector<CurvePart>& parts, double sign) {
  GatheredTempering gathered;
  Tempering tempering;
  for (const CurvePart& part : parts) {
    Steps steps(*part.trace);
    for (Steps::Step step{}; steps.next(step);) {
      double off = 0.0;
      if (sign != 0.0 && part.guard != nullptr) {
        off = sign * part.guard->of(*part.trace, step.source).expanded_k(step.celsius);
        if (!std::isfinite(off)) return std::nullopt;
      }
      gathered.add(step.celsius + off, step.seconds);
    }
    for (const Span& span : unknown_spans(*part.trace, part.record.first, part.record.second))
      tempering.unknown_s += span.second - span.first;
  }
  const auto parameter = gathered.parameter();
  if (!parameter) return std::nullopt;
  tempering.parameter = *parameter;
  return tempering;
}

std::optional<double> tempering_passes(const Trace& trace, double parameter) {
  GatheredTempering gathered;
  Steps steps(trace);
  for (Steps::Step step{}; steps.next(step);) {
    gathered.add(step.celsius, step.seconds);
    if (gathered.parameter().value_or(0.0) > parameter) return step.to_s;
  }
  return std::nullopt;
}

double equivalent_hours(double parameter, double celsius) {
  return std::pow(10.0, parameter * 1000.0 / (celsius + kZeroCelsius_k) - kTemperingConstant);
}

}  // namespace soakwright
