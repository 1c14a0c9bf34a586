// What the judging of one weld works on, and where its requirements and findings go.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/judge/verdict.h"
#include "core/measure/groundwork.h"
#include "core/measure/hold_choice.h"
#include "core/procedure/job.h"
#include "core/procedure/procedure.h"

namespace soakwright {

/// Record, procedure and traces: the same for all welds of a record.
struct RecordCase {
  const Record& record;
  const Procedure& procedure;
  const Job* job = nullptr;
  const Groundwork& ground;
  const TraceSet& set;
  Verdicts& out;
  [[nodiscard]] Span time() const { return {record.begin_s(), record.end_s()}; }
  [[nodiscard]] const std::string& name(std::size_t trace) const { return set.traces[trace].name; }
};

struct WeldCase : RecordCase {
  std::optional<std::string> weld;
  std::optional<Thickness> thickness;
  std::vector<std::size_t> group;  ///< judged traces
  std::vector<std::size_t> edge;   ///< traces at the edge of the heated band
  std::vector<HoldCourse> holds;
};

/// A requirement with id, kind, stage, weld, unit and limit set; stage 0 is the whole record.
Requirement requirement_for(RequirementKind kind, std::size_t stage, const std::optional<std::string>& weld,
                            double limit);

/// Sets `measured` and `margin`.
void set_measured(Requirement& requirement, double measured);
/// Whether `measured` is beyond the limit by more than the slack of its unit.
bool beyond_limit(const Requirement& requirement, double measured);
/// a − b, decimals as decimals: 620 − 611.6 is 8.4.
double decimal_difference(double a, double b);

/// A finding on a requirement.
Finding finding_on(const Requirement& requirement, Finding::Kind kind);

}  // namespace soakwright
