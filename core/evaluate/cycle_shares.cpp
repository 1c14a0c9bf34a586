// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/evaluate/cycle_shares.h"

#include <algorithm>

namespace soakwright {
namespace {

const Requirement* same_in(const PreviousCycle& previous, const HoldCase& hold, RequirementKind kind) {
  const auto same = std::find_if(
      previous.requirements.begin(), previous.requirements.end(), [&](const Requirement& requirement) {
        return requirement.kind == kind && requirement.stage == hold.stage.number &&
               requirement.weld == hold.weld.weld;
      });
  return same == previous.requirements.end() ? nullptr : &*same;
}

}  // namespace

bool adds_up(const HoldCase& hold) {
  return !hold.weld.previous_records.empty() && hold.specified.count == HoldStage::Count::accumulated;
}

std::vector<CycleShare> cycle_shares(const HoldCase& hold, const CycleShare& here) {
  std::vector<CycleShare> shares;
  if (!adds_up(hold)) return shares;
  for (const PreviousCycle& previous : hold.weld.previous_records)
    if (const Requirement* same = same_in(previous, hold, RequirementKind::hold_time))
      shares.push_back({previous.cycle, same->certain_s.value_or(0.0), same->possible_s, same->excursions,
                        same->without_excursions_s.value_or(same->certain_s.value_or(0.0))});
  shares.push_back(here);
  return shares;
}

std::vector<ChannelTime> added_up_by_channel(const HoldCase& hold, std::vector<ChannelTime> here) {
  if (!adds_up(hold)) return here;
  for (const PreviousCycle& previous : hold.weld.previous_records) {
    const Requirement* same = same_in(previous, hold, RequirementKind::hold_time_max);
    const std::vector<ChannelTime> before =
        same != nullptr ? same->channel_times : std::vector<ChannelTime>{};
    for (ChannelTime& channel : here) {
      const auto its = std::find_if(before.begin(), before.end(),
                                    [&](const ChannelTime& one) { return one.channel == channel.channel; });
      if (its == before.end()) {
        channel.possible_s.reset();
        continue;
      }
      channel.measured_s += its->measured_s;
      channel.certain_s += its->certain_s;
      channel.possible_s = channel.possible_s && its->possible_s
                               ? std::optional{*channel.possible_s + *its->possible_s}
                               : std::nullopt;
    }
    for (const ChannelTime& one : before) {
      const bool is_here = std::any_of(here.begin(), here.end(), [&](const ChannelTime& channel) {
        return channel.channel == one.channel;
      });
      if (is_here) continue;
      here.push_back(one);
      here.back().possible_s.reset();
    }
  }
  return here;
}

CycleShare added_up(const std::vector<CycleShare>& shares) {
  CycleShare sum;
  sum.possible_s = 0.0;
  for (const CycleShare& share : shares) {
    sum.cycle = share.cycle;
    sum.certain_s += share.certain_s;
    sum.without_excursions_s += share.without_excursions_s;
    sum.excursions.count += share.excursions.count;
    sum.excursions.seconds += share.excursions.seconds;
    sum.possible_s = sum.possible_s && share.possible_s ? std::optional{*sum.possible_s + *share.possible_s}
                                                        : std::nullopt;
  }
  return sum;
}

void remark_shares(const std::vector<CycleShare>& shares, Statements& remarks) {
  int part = 0;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    const int cycle = shares[i].cycle;
    const bool after_same = i > 0 && shares[i - 1].cycle == cycle;
    const bool before_same = i + 1 < shares.size() && shares[i + 1].cycle == cycle;
    part = after_same ? part + 1 : 1;
    const Duration certain = Duration::of_seconds(shares[i].certain_s);
    remarks.push_back(after_same || before_same
                          ? state(Sentence::share_of_part, Count::of(cycle), Count::of(part), certain)
                          : state(Sentence::share_of_cycle, Count::of(cycle), certain));
  }
}

}  // namespace soakwright
