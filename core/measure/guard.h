// SPDX-License-Identifier: GPL-3.0-or-later
// The uncertainty of what a trace reads: which channel's budget counts at a time, and ranges moved by U.
#pragma once

#include <cstddef>
#include <vector>

#include "core/measure/holds/range_spans.h"
#include "core/measure/traces/trace.h"
#include "core/uncertainty/budget.h"

namespace soakwright {

/// Narrowed: a reading in it is in the range for certain. Widened: one out of it is out for certain.
enum class RangeEdge { as_asked, narrowed, widened };

class Guard {
 public:
  /// One budget for each channel of the record.
  explicit Guard(std::vector<Budget> budgets) : budgets_(std::move(budgets)) {}

  [[nodiscard]] const Budget& of_channel(std::size_t channel) const { return budgets_[channel]; }
  [[nodiscard]] const Budget& of(const Trace& trace, std::size_t source) const {
    return budgets_[trace.sources[source].channel];
  }
  /// U of the reading `celsius` of `trace` at `t_s`: behind a take-over it is the spare's.
  [[nodiscard]] double expanded_k(const Trace& trace, double t_s, double celsius) const {
    const bool spare = trace.take_over_s && t_s > *trace.take_over_s;
    return of(trace, spare ? 1 : 0).expanded_k(celsius);
  }
  /// low…high, each edge moved by the channel's U at that edge, for each source of the trace.
  [[nodiscard]] SourceRanges moved(const Trace& trace, TemperatureRange range, RangeEdge edge) const;
  /// The reading that with its own U is just at `level`: r + U(r) = level.
  [[nodiscard]] double surely_below(const Trace& trace, std::size_t source, double level_c) const;

 private:
  std::vector<Budget> budgets_;
};

/// Two channels: √(U₁² + U₂²).
double pair_uncertainty_k(double first_k, double second_k);

}  // namespace soakwright
