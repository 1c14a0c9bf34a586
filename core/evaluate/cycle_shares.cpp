#include "core/evaluate/cycle_shares.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/evaluate/sentences.h"

namespace soakwright {

std::vector<CycleShare> cycle_shares(const HoldCase& hold, const HoldTime& here) {
  std::vector<CycleShare> shares;
  if (hold.weld.previous_records.empty() || hold.asked.count != HoldStage::Count::accumulated) return shares;
  for (const PreviousCycle& earlier : hold.weld.previous_records) {
    const auto same = std::find_if(
        earlier.requirements.begin(), earlier.requirements.end(), [&](const Requirement& requirement) {
          return requirement.kind == RequirementKind::hold_time && requirement.stage == hold.stage.number &&
                 requirement.weld == hold.weld.weld;
        });
    if (same != earlier.requirements.end())
      shares.push_back({earlier.cycle, same->certain_s.value_or(0.0), same->possible_s});
  }
  shares.push_back({hold.weld.cycle, here.certain_s, here.possible_s});
  return shares;
}

HoldTime added_up(const std::vector<CycleShare>& shares) {
  HoldTime sum{0.0, 0.0};
  for (const CycleShare& share : shares) {
    sum.certain_s += share.certain_s;
    sum.possible_s = sum.possible_s && share.possible_s ? std::optional{*sum.possible_s + *share.possible_s}
                                                        : std::nullopt;
  }
  return sum;
}

std::string say_shares(const std::vector<CycleShare>& shares) {
  std::string text;
  for (const CycleShare& share : shares)
    text += fmt::format("{}cycle {}: {}", text.empty() ? "" : ", ", share.cycle, say_time(share.certain_s));
  return text;
}

}  // namespace soakwright
