// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/tempering.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/measure/traces/trace_steps.h"
#include "core/system/parallel_for.h"

namespace soakwright {
namespace {

std::optional<Tempering> tempering_with(const GatheredTempering& gathered, const Trace& trace, Span record) {
  const auto parameter = gathered.parameter();
  if (!parameter) return std::nullopt;
  Tempering tempering{*parameter, 0.0};
  for (const Span& span : unknown_spans(trace, record.first, record.second))
    tempering.unknown_s += span.second - span.first;
  return tempering;
}

double mean_of(const TraceStep& step) { return (step.from_c + step.to_c) / 2.0; }

GatheredTempering gathered_over(const Trace& trace, double constant) {
  GatheredTempering gathered(constant);
  TraceSteps steps(trace);
  for (TraceStep step{}; steps.next(step);) gathered.add(mean_of(step), step.to_s - step.from_s);
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

std::vector<std::optional<Tempering>> temperings_of(const std::vector<Trace>& traces, Span record,
                                                    double constant) {
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
      all[i] = tempering_with(gathered_over(traces[i], constant), traces[i], record);
      return;
    }
    const std::size_t first = part * kTemperingLanes;
    const std::size_t count = std::min(in_lanes.size() - first, kTemperingLanes);
    std::array<const double*, kTemperingLanes> celsius{};
    for (std::size_t k = 0; k < kTemperingLanes; ++k)  // lanes of no trace repeat the last
      celsius[k] = traces[in_lanes[first + std::min(k, count - 1)]].sources.front().c.data();
    const auto gathered = gather_lanes(traces[in_lanes[first]].sources.front().t, celsius, constant);
    for (std::size_t k = 0; k < count; ++k)
      all[in_lanes[first + k]] = tempering_with(gathered[k], traces[in_lanes[first + k]], record);
  });
  return all;
}

std::optional<Tempering> tempering_over(const std::vector<CurvePart>& parts, double sign, double constant) {
  GatheredTempering gathered(constant);
  Tempering tempering;
  for (const CurvePart& part : parts) {
    TraceSteps steps(*part.trace);
    for (TraceStep step{}; steps.next(step);) {
      double off = 0.0;
      if (sign != 0.0 && part.guard != nullptr) {
        off = sign * part.guard->of(*part.trace, step.source).expanded_k(mean_of(step));
        if (!std::isfinite(off)) return std::nullopt;
      }
      gathered.add(mean_of(step) + off, step.to_s - step.from_s);
    }
    for (const Span& span : unknown_spans(*part.trace, part.record.first, part.record.second))
      tempering.unknown_s += span.second - span.first;
  }
  const auto parameter = gathered.parameter();
  if (!parameter) return std::nullopt;
  tempering.parameter = *parameter;
  return tempering;
}

std::optional<double> tempering_passes(const std::vector<CurvePart>& parts, double parameter,
                                       double constant) {
  GatheredTempering gathered(constant);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    TraceSteps steps(*parts[i].trace);
    for (TraceStep step{}; steps.next(step);) {
      gathered.add(mean_of(step), step.to_s - step.from_s);
      if (i + 1 == parts.size() && gathered.parameter().value_or(0.0) > parameter) return step.to_s;
    }
  }
  return std::nullopt;
}

double equivalent_hours(double parameter, double celsius, double constant) {
  return std::pow(10.0, parameter * 1000.0 / (celsius + kZeroCelsius_k) - constant);
}

double parameter_of(double celsius, double hours, double constant) {
  return (celsius + kZeroCelsius_k) * (constant + std::log10(hours)) / 1000.0;
}

std::optional<double> carried_along(const std::vector<LevelHold>& holds, double constant) {
  GatheredTempering gathered(constant);
  for (const LevelHold& hold : holds) gathered.add(hold.celsius, hold.hours * 3600.0);
  return gathered.parameter();
}

std::optional<double> referred_sum(const std::vector<LevelHold>& holds, double celsius, double constant) {
  if (holds.empty()) return std::nullopt;
  double hours = 0.0;
  for (const LevelHold& hold : holds)
    hours += equivalent_hours(parameter_of(hold.celsius, hold.hours, constant), celsius, constant);
  return parameter_of(celsius, hours, constant);
}

double time_not_known(const Trace& trace, Span record) {
  double known_s = 0.0;
  for (const Piece& piece : trace.pieces)
    known_s += std::max(0.0, std::min(piece.to, record.second) - std::max(piece.from, record.first));
  return std::max(0.0, record.second - record.first - known_s);
}

}  // namespace soakwright
