// The requirement table: each limit with what was measured against it.
#include <fmt/format.h>

#include "core/report/result_words.h"
#include "core/report/sections.h"

namespace soakwright {
namespace {

std::string where_text(const Requirement& requirement) {
  if (!requirement.channel) return {};
  if (!requirement.channel_2) return *requirement.channel;
  return *requirement.channel + " and " + *requirement.channel_2;
}

std::string rate_text(const RateAlternative& rate, const PrintedNumbers& say) {
  if (!rate.rate_c_per_h) return "not measured";
  return fmt::format("{}, {}", say.rate(*rate.rate_c_per_h), result_word(rate.verdict));
}

std::vector<LabelledText> alternative_facts(const Requirement& requirement, const PrintedNumbers& say) {
  std::vector<LabelledText> facts;
  if (requirement.standard_error) facts.push_back({"Standard error", say.standard_error(requirement)});
  if (requirement.certain_s) facts.push_back({"Certain", say.duration(*requirement.certain_s)});
  if (requirement.possible_s)
    facts.push_back({"Possible", say.duration(*requirement.possible_s)});
  else if (requirement.certain_s)
    facts.push_back({"Possible", "open: the record starts or ends in the hold"});
  for (const CycleShare& share : requirement.cycles)
    facts.push_back({fmt::format("Cycle {}", share.cycle), say.duration(share.certain_s) + " certain"});
  for (const RateAlternative& rate : requirement.alternatives.rates)
    facts.push_back(
        {rate.over == "overall" ? std::string{"Overall"} : "Worst over " + rate.over, rate_text(rate, say)});
  for (const HoldAlternative& hold : requirement.alternatives.holds)
    facts.push_back({hold.excursion_allowed_s == 0.0
                         ? std::string{"Without excursion_allowed"}
                         : "With a excursion_allowed of " + say.duration(hold.excursion_allowed_s),
                     fmt::format("{} at a time_range, {} added up", say.duration(hold.continuous_s),
                                 say.duration(hold.accumulated_s))});
  if (const auto& spread = requirement.alternatives.spread)
    facts.push_back({"Hottest and coldest there",
                     say.temperature(spread->hottest_c) + " and " + say.temperature(spread->coldest_c)});
  return facts;
}

}  // namespace

std::string deviation_text(const ReportContext& context, const FirstDeviation& deviation) {
  return context.say.when(deviation.at_s, std::nullopt, std::nullopt) + ": " + deviation.reason;
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
    row.label = requirement_label(requirement.kind);
    row.limit = std::move(text.limit);
    row.measured = text.measured.empty() ? "not measured" : std::move(text.measured);
    row.margin = std::move(text.margin);
    row.uncertainty = std::move(text.uncertainty);
    row.where = where_text(requirement);
    row.when = context.say.when(requirement.at_s, requirement.from_s, requirement.to_s);
    row.brief_when = context.say.brief_when(requirement.at_s, requirement.from_s, requirement.to_s);
    row.verdict = requirement.verdict;
    row.verdict_text = verdict_text(requirement.verdict);
    row.text = requirement.text;
    row.alternatives = alternative_facts(requirement, context.say);
    row.shortfall = requirement.shortfall;
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
