// SPDX-License-Identifier: GPL-3.0-or-later
// What the evaluating of one weld works on, and where its requirements and findings go.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/evaluate/verdict.h"
#include "core/measure/guard.h"
#include "core/measure/holds/hold_choice.h"
#include "core/measure/traces/prepared_traces.h"
#include "core/procedure/job/job.h"
#include "core/procedure/procedure.h"

namespace soakwright {

/// Record, procedure and traces: the same for all welds of a record.
struct RecordCase {
  const Record& record;
  const Procedure& procedure;
  const Job* job = nullptr;
  const PreparedTraces& ground;
  const TraceSet& set;
  Verdicts& out;
  const Guard* guard = nullptr;                     ///< only where the decision is guarded
  std::span<const PreviousCycle> previous_records;  ///< previous records of the welds, in order
  int cycle = 1;                                    ///< which this one is
  [[nodiscard]] Span time() const { return {record.begin_s(), record.end_s()}; }
  [[nodiscard]] const std::string& name(std::size_t trace) const { return set.traces[trace].name; }
};

struct WeldCase : RecordCase {
  std::optional<std::string> weld;
  std::optional<Thickness> thickness;
  std::vector<std::size_t> group;  ///< evaluated traces
  std::vector<std::size_t> edge;   ///< traces at the edge of the heated band
  std::vector<HoldCourse> holds;
  /// The holds again with the ranges narrowed and widened by U; empty where the decision is simple.
  std::vector<HoldCourse> sure_holds, possible_holds;
  std::vector<std::vector<HoldCourse>>
      holds_by_excursion_allowed;  ///< for the alternatives: at excursion_allowed 0, 2, 5 and 10 min
  /// low…high for each channel of the group, its edges moved by U; as specified where the decision is simple.
  [[nodiscard]] GroupRanges ranges(TemperatureRange range, RangeEdge which) const;
};

/// A requirement with id, kind, stage, weld, unit and limit set; stage 0 is the whole record.
Requirement requirement_for(RequirementKind kind, std::size_t stage, const std::optional<std::string>& weld,
                            double limit);

/// Sets `measured` and `margin`.
void set_measured(Requirement& requirement, double measured);
/// The same with U: the margin is what U leaves of it, so that it is positive when met. An infinite U leaves
/// none and is not shown.
void set_measured(Requirement& requirement, double measured, double uncertainty);
/// Met where `measured` is within the limit by U, not met where it is beyond it by more than U, else
/// inconclusive.
Verdict held_to_limit(const Requirement& requirement, double measured, double uncertainty);
/// What is left of the margin once U is taken off.
double margin_after(const Requirement& requirement, double measured, double uncertainty);
/// Whether `measured` is beyond the limit by more than the slack of its unit.
bool beyond_limit(const Requirement& requirement, double measured);
/// a − b, decimals as decimals: 620 − 611.6 is 8.4.
double decimal_difference(double a, double b);

/// A finding on a requirement.
Finding finding_on(const Requirement& requirement, Finding::Kind kind);

}  // namespace soakwright
