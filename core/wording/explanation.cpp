// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/explanation.h"

#include <fmt/format.h>

#include "core/wording/draft_comments.h"
#include "core/wording/requirement_words.h"

namespace soakwright {
namespace {

/// Where the limit comes from, as the procedure says: of its stage, else of the whole; empty where it does
/// not say.
std::string source_of(const Requirement& requirement, const Procedure& procedure) {
  const auto said = [](const Provenance& provenance) {
    const std::string source = provenance.source.value_or(std::string{});
    if (source.empty() || provenance.flag.value_or(Provenance::Flag::seen) == Provenance::Flag::seen)
      return source;
    const std::string flag = flag_text(*provenance.flag);
    return source == flag ? source : source + ", " + flag;
  };
  if (requirement.stage == 0 || requirement.stage > procedure.stages.size())
    return said(procedure.provenance);
  const std::string own = said(procedure.stages[requirement.stage - 1].provenance);
  return own.empty() ? said(procedure.provenance) : own;
}

/// "No heating faster than this over the rate window. Here: at most 144.7 °C/h (HTP-021: EN 13445-4)."
std::string required_text(const Requirement& requirement, const RequirementWords& known,
                          const Procedure& procedure, const PrintedNumbers& say) {
  const std::string source = source_of(requirement, procedure);
  return fmt::format("{} Here: {} {} ({}).", known.requirement,
                     requirement.limit_is_least() ? "at least" : "at most",
                     say.limit(quantity_of(requirement.quantity(), requirement.limit)),
                     source.empty() ? procedure.number : procedure.number + ": " + source);
}

}  // namespace

std::optional<Explanation> explain(const Finding& finding, const Requirement* requirement,
                                   const Procedure& procedure, const PrintedNumbers& say,
                                   const std::string& shown) {
  if (finding.kind == Finding::Kind::note || requirement == nullptr) return std::nullopt;
  const RequirementWords known = words_of(requirement->kind);
  Explanation explanation;
  explanation.required = required_text(*requirement, known, procedure, say);
  explanation.why = known.why;
  explanation.why_source = known.why_source;
  explanation.shown = shown;
  explanation.causes.assign(known.causes.begin(), known.causes.end());
  explanation.look_first = known.look_first;
  if (finding.kind == Finding::Kind::inconclusive) explanation.would_help = known.would_help;
  explanation.mark = kCommonPractice;
  return explanation;
}

}  // namespace soakwright
