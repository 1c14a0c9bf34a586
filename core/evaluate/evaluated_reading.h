// SPDX-License-Identifier: GPL-3.0-or-later
// Single readings against a largest or least limit: maximum temperature, at start and end, over-temperature.
#pragma once

#include <optional>
#include <vector>

#include "core/evaluate/weld_case.h"
#include "core/measure/extremes.h"

namespace soakwright {

/// The reading with the smallest margin, and the worst verdict of all.
struct EvaluatedReading {
  ReadingAt reading;
  double uncertainty_k = 0.0;  ///< U; 0 where the decision is simple
  Verdict verdict = Verdict::met;
};

/// Of these readings the one with the smallest margin, each with its own U where the decision is guarded; of
/// equals the first in time, then the first in the log's order. Nothing of none.
std::optional<EvaluatedReading> worst_reading(const RecordCase& record_case, const Requirement& requirement,
                                              const std::vector<ReadingAt>& readings);

/// The highest readings of the group within `time` against a largest limit in °C, the lowest ones against a
/// least limit; each with its own U where the decision is guarded.
std::optional<EvaluatedReading> evaluated_extreme(const RecordCase& record_case,
                                                  const Requirement& requirement, Group group, Span time);

/// Puts it into the requirement: measured, margin, U, channel, time, verdict.
void set_reading(const RecordCase& record_case, Requirement& requirement, const EvaluatedReading& evaluated);

/// Times of each channel above a largest limit, or within U of it.
std::vector<Finding> hot_places(const RecordCase& record_case, const Requirement& requirement, Group group,
                                Span time);

/// One finding for each time of a channel of the group that overlaps `time` and is not known, but for those
/// between readings that are all at or below `cold_c`: the channel is taken to have stayed cold there.
std::vector<Finding> unknown_places(const RecordCase& record_case, const Requirement& requirement,
                                    Group group, Span time, double cold_c);

/// Remarks that U is not known, where the decision is guarded and it is not.
void remark_uncertainty(const RecordCase& record_case, Requirement& requirement);

}  // namespace soakwright
