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

std::string rate_text(const RateBasis& rate, const PrintedNumbers& say) {
  if (!rate.rate_c_per_h) return "not measured";
  return fmt::format("{}, {}", say.rate(*rate.rate_c_per_h), result_word(rate.verdict));
}

std::vector<Fact> basis_facts(const Requirement& requirement, const PrintedNumbers& say) {
  std::vector<Fact> facts;
  if (requirement.standard_error)
    facts.push_back({"Standard error", say.value(requirement.unit, *requirement.standard_error, 1)});
  if (requirement.certain_s) facts.push_back({"Certain", rounded_duration(*requirement.certain_s)});
  if (requirement.possible_s)
    facts.push_back({"Possible", rounded_duration(*requirement.possible_s)});
  else if (requirement.certain_s)
    facts.push_back({"Possible", "open: the record starts or ends in the hold"});
  for (const CycleShare& share : requirement.cycles)
    facts.push_back({fmt::format("Cycle {}", share.cycle), rounded_duration(share.certain_s) + " certain"});
  for (const RateBasis& rate : requirement.basis.rates)
    facts.push_back(
        {rate.over == "overall" ? std::string{"Overall"} : "Worst over " + rate.over, rate_text(rate, say)});
  for (const HoldBasis& hold : requirement.basis.holds)
    facts.push_back({hold.grace_s == 0.0 ? std::string{"Without grace"}
                                         : "With a grace of " + rounded_duration(hold.grace_s),
                     fmt::format("{} at a stretch, {} added up", rounded_duration(hold.continuous_s),
                                 rounded_duration(hold.accumulated_s))});
  if (const auto& spread = requirement.basis.spread)
    facts.push_back({"Hottest and coldest there",
                     say.temperature(spread->hottest_c) + " and " + say.temperature(spread->coldest_c)});
  return facts;
}

}  // namespace

std::string drift_text(const Telling& telling, const FirstDrift& drift) {
  return telling.say.when(drift.at_s, std::nullopt, std::nullopt) + ": " + drift.reason;
}

std::vector<RequirementRow> requirement_rows(const Telling& telling, const Chart& chart) {
  std::vector<RequirementRow> rows;
  const Verdicts* verdicts = telling.analysis.verdicts.get();
  if (verdicts == nullptr) return rows;
  rows.reserve(verdicts->requirements.size());
  for (std::size_t i = 0; i < verdicts->requirements.size(); ++i) {
    const Requirement& requirement = verdicts->requirements[i];
    MeasuredText text = telling.say.measured(requirement);
    RequirementRow row;
    row.requirement = i;
    row.id = requirement.id;
    row.stage = stage_title(telling.analysis.procedure.get(), requirement.stage);
    row.weld = weld_text(requirement.weld);
    row.label = requirement_label(requirement.kind);
    row.limit = std::move(text.limit);
    row.measured = text.measured.empty() ? "not measured" : std::move(text.measured);
    row.margin = std::move(text.margin);
    row.uncertainty = std::move(text.uncertainty);
    row.where = where_text(requirement);
    row.when = telling.say.when(requirement.at_s, requirement.from_s, requirement.to_s);
    row.brief_when = telling.say.brief_when(requirement.at_s, requirement.from_s, requirement.to_s);
    row.verdict = requirement.verdict;
    row.verdict_text = verdict_text(requirement.verdict);
    row.text = requirement.text;
    row.basis = basis_facts(requirement, telling.say);
    row.would_need = requirement.would_need;
    for (const FirstDrift& drift : telling.drifts)
      if (drift.requirement == i) {
        row.first_drift = drift_text(telling, drift);
        row.first_drift_s = drift.at_s;
      }
    row.evidence = evidence_of(requirement, telling, chart);
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace soakwright
