// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/requirement_details.h"

#include <fmt/format.h>

#include "core/wording/stage_words.h"

namespace soakwright {
namespace {

std::string rate_text(const RateAlternative& rate, const PrintedNumbers& say) {
  if (!rate.rate_c_per_h) return "not measured";
  return fmt::format("{} ({})", say.rate(*rate.rate_c_per_h), verdict_text(rate.verdict));
}

LabelledText hold_text(const HoldAlternative& hold, const PrintedNumbers& say) {
  return {hold.excursion_allowed_s == 0.0 ? std::string{"No excursion allowed"}
                                          : "Excursion allowed " + say.duration(hold.excursion_allowed_s),
          fmt::format("{} continuous, {} accumulated", say.duration(hold.continuous_s),
                      say.duration(hold.accumulated_s))};
}

}  // namespace

std::vector<LabelledText> requirement_details(const Requirement& requirement, const PrintedNumbers& say) {
  std::vector<LabelledText> details;
  if (requirement.standard_error) details.push_back({"Standard error", say.standard_error(requirement)});
  if (requirement.certain_s) details.push_back({"Certain", say.duration(*requirement.certain_s)});
  if (requirement.possible_s)
    details.push_back({"Possible", say.duration(*requirement.possible_s)});
  else if (requirement.certain_s)
    details.push_back({"Possible", "not known: the record starts or ends within the hold"});
  for (const CycleShare& share : requirement.cycles)
    details.push_back({fmt::format("Cycle {}", share.cycle), say.duration(share.certain_s) + " certain"});
  for (const RateAlternative& rate : requirement.alternatives.rates)
    details.push_back({rate.window_minutes ? fmt::format("Steepest over {} min", *rate.window_minutes)
                                           : std::string{"Overall"},
                       rate_text(rate, say)});
  for (const HoldAlternative& hold : requirement.alternatives.holds) details.push_back(hold_text(hold, say));
  if (const auto& spread = requirement.alternatives.spread)
    details.push_back({"Hottest and coldest",
                       say.temperature(spread->hottest_c) + " and " + say.temperature(spread->coldest_c)});
  return details;
}

}  // namespace soakwright
