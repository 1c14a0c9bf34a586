// SPDX-License-Identifier: GPL-3.0-or-later
// The findings, each with the requirement it belongs to and what the review decided on it.
#include <fmt/format.h>

#include "core/report/open_findings.h"
#include "core/report/sections/sections.h"
#include "core/wording/requirement_text.h"
#include "core/wording/sections/review_words.h"

namespace soakwright {
namespace {

std::string extreme_text(const Finding& finding, const PrintedNumbers& say) {
  return finding.extreme ? say.text(*finding.extreme) : std::string{};
}

}  // namespace

std::optional<double> extreme_temperature(const Finding& finding) {
  const auto* temperature = finding.extreme ? std::get_if<Temperature>(&*finding.extreme) : nullptr;
  return temperature != nullptr ? std::optional{temperature->celsius()} : std::nullopt;
}

const Requirement* requirement_of(const Finding& finding, const Verdicts& verdicts) {
  for (const Requirement& requirement : verdicts.requirements)
    if (requirement.id == finding.requirement && requirement.weld == finding.weld) return &requirement;
  return nullptr;
}

std::vector<FindingRow> finding_rows(const ReportContext& context,
                                     const std::vector<RequirementRow>& requirements) {
  std::vector<FindingRow> rows;
  const Verdicts* verdicts = context.analysis.verdicts.get();
  if (verdicts == nullptr) return rows;
  for (std::size_t i = 0; i < verdicts->findings.size(); ++i) {
    const Finding& finding = verdicts->findings[i];
    FindingRow row;
    row.finding = i;
    row.tag = fmt::format("{}", i + 1);
    row.kind = finding.kind;
    row.kind_text = finding_kind_text(finding.kind);
    row.id = finding.requirement;
    const Requirement* requirement = requirement_of(finding, *verdicts);
    for (std::size_t r = 0; r < requirements.size(); ++r) {
      if (&verdicts->requirements[requirements[r].requirement] != requirement) continue;
      row.requirement = r;
      row.label = requirements[r].label;
      row.stage = requirements[r].stage;
    }
    row.weld = weld_text(finding.weld);
    row.where = finding.channel.value_or(std::string{});
    row.when = context.say.when(std::nullopt, finding.from_s, finding.to_s);
    row.brief_when = context.say.brief_when(std::nullopt, finding.from_s, finding.to_s);
    row.extreme = extreme_text(finding, context.say);
    row.text = finding_text(finding, requirement, context);
    row.explanation = explain(finding, requirement, *context.analysis.procedure, context.say, row.text);
    if (context.analysis.review)
      for (const FindingReview& review : context.analysis.review->findings)
        if (is_disposition_of(review, finding)) row.disposition = disposition_text(review);
    rows.push_back(std::move(row));
  }
  for (const std::size_t open : open_findings(context.analysis)) rows[open].open = true;
  return rows;
}

}  // namespace soakwright
