// SPDX-License-Identifier: GPL-3.0-or-later
// The requirement table: each limit with what was measured against it.
#include "core/explain/shortfall.h"
#include "core/report/sections/sections.h"
#include "core/wording/requirement_details.h"
#include "core/wording/requirement_text.h"
#include "core/wording/requirement_words.h"
#include "core/wording/sections/report_words.h"
#include "core/wording/statement_words.h"

namespace soakwright {
namespace {

std::string where_text(const Requirement& requirement) {
  if (!requirement.channel) return {};
  if (!requirement.channel_2) return *requirement.channel;
  return *requirement.channel + " and " + *requirement.channel_2;
}

}  // namespace

std::string deviation_text(const ReportContext& context, const FirstDeviation& deviation) {
  const bool at_once = deviation.lost_from_s <= deviation.at_s;
  const Statements both{deviation.what,
                        at_once ? state(Sentence::deviation_lost_then)
                                : state(Sentence::deviation_lost_after, AtMoment{deviation.lost_from_s})};
  return context.say.moment(deviation.at_s) + ": " + words(both, context.say);
}

std::vector<RequirementRow> requirement_rows(const ReportContext& context, const Chart& chart) {
  std::vector<RequirementRow> rows;
  const Verdicts* verdicts = context.analysis.verdicts.get();
  if (verdicts == nullptr) return rows;
  rows.reserve(verdicts->requirements.size());
  for (std::size_t i = 0; i < verdicts->requirements.size(); ++i) {
    const Requirement& requirement = verdicts->requirements[i];
    MeasuredText text = context.say.measured(requirement);
    RequirementRow row;
    row.requirement = i;
    row.id = requirement.id;
    row.stage = stage_title(context.analysis.procedure.get(), requirement.stage);
    row.weld = weld_text(requirement.weld);
    row.label = words_of(requirement.kind).label;
    row.limit = std::move(text.limit);
    row.measured = text.measured.empty() ? report_words::not_measured() : std::move(text.measured);
    row.margin = std::move(text.margin);
    row.uncertainty = std::move(text.uncertainty);
    row.where = where_text(requirement);
    row.when = context.say.when(requirement.at_s, requirement.from_s, requirement.to_s);
    row.brief_when = context.say.brief_when(requirement.at_s, requirement.from_s, requirement.to_s);
    row.verdict = requirement.verdict;
    row.verdict_text = verdict_text(requirement.verdict);
    row.text = requirement_text(requirement, *context.analysis.procedure, context.say);
    row.remarks = words(requirement.remarks, context.say);
    row.alternatives = requirement_details(requirement, context.say);
    row.shortfall = words(shortfall(*context.analysis.procedure, requirement), context.say);
    for (const FirstDeviation& deviation : context.deviations)
      if (deviation.requirement == i) {
        row.first_deviation = deviation_text(context, deviation);
        row.first_deviation_s = deviation.at_s;
      }
    row.evidence = evidence_of(requirement, context, chart);
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace soakwright
