#include "core/explain/explanation.h"

#include <fmt/format.h>

#include "core/explain/limit_reasons.h"
#include "core/units/printed_quantity.h"

namespace soakwright {
namespace {

/// Where the limit comes from, as the procedure says; of its stage, else of the whole.
std::string source_of(const Requirement& requirement, const Procedure& procedure) {
  const auto& whole = procedure.provenance.source;
  if (requirement.stage == 0 || requirement.stage > procedure.stages.size())
    return whole.value_or(std::string{});
  const auto& own = procedure.stages[requirement.stage - 1].provenance.source;
  return own ? *own : whole.value_or(std::string{});
}

}  // namespace

std::optional<Explanation> explain(const Finding& finding, const Requirement* requirement,
                                   const Procedure& procedure) {
  if (finding.kind == Finding::Kind::note || requirement == nullptr) return std::nullopt;
  const LimitReason& reason = reason_for(requirement->kind);
  Explanation explanation;
  explanation.asked =
      fmt::format("{} Here: {} {}", reason.asks, requirement->limit_is_least() ? "at least" : "at most",
                  printed_limit(quantity_of(requirement->quantity(), requirement->limit), {}));
  if (const std::string source = source_of(*requirement, procedure); !source.empty())
    explanation.asked += fmt::format(" ({}: {})", procedure.number, source);
  else
    explanation.asked += fmt::format(" ({})", procedure.number);
  explanation.why = reason.why;
  explanation.why_source = reason.why_source;
  explanation.shown = finding.text;
  explanation.causes.assign(reason.causes.begin(), reason.causes.end());
  explanation.look_first = reason.look_first;
  if (finding.kind == Finding::Kind::inconclusive) explanation.would_help = reason.would_help;
  explanation.mark = kCommonPractice;
  return explanation;
}

}  // namespace soakwright
