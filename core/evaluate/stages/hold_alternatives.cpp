// SPDX-License-Identifier: GPL-3.0-or-later
// What a hold's time comes to under another excursion_allowed, and when each thermocouple came in and left.
#include <algorithm>

#include "core/evaluate/cycle_shares.h"
#include "core/evaluate/stages/hold_case.h"
#include "core/measure/holds/hold_time.h"

namespace soakwright {
namespace {

constexpr double kExcursionsAllowed_s[] = {0.0, 120.0, 300.0, 600.0};

/// Of the excursions filled in the hold's own in-range times.
double deepest_filled(const WeldCase& weld, const HoldCourse& hold, HoldStage::Count count) {
  if (!hold.continuous) return 0.0;
  const std::vector<Span> own =
      count == HoldStage::Count::accumulated ? hold.all_in_range() : std::vector<Span>{*hold.continuous};
  double deepest = 0.0;
  for (const Excursion& excursion : hold.range.excursions) {
    const bool inside = excursion.filled && std::any_of(own.begin(), own.end(), [&](const Span& time) {
                          return excursion.time.first >= time.first && excursion.time.second <= time.second;
                        });
    if (inside)
      deepest =
          std::max(deepest, depth_of(weld.set, weld.group, excursion.time, hold.low_c, hold.high_c).kelvin);
  }
  return deepest;
}

}  // namespace

std::vector<HoldCourse> with_excursion_allowed(const WeldCase& weld,
                                               const std::vector<HoldCourse>& as_evaluated, RangeEdge edge,
                                               const ExcursionAllowed& excursion_allowed) {
  std::vector<HoldCourse> holds;
  for (const HoldCourse& one : as_evaluated) {
    HoldCourse hold;
    hold.stage = one.stage;
    hold.low_c = one.low_c;
    hold.high_c = one.high_c;
    hold.range.spans = one.range.spans;
    fill_excursions(hold.range, weld.set, weld.group, weld.ranges({hold.low_c, hold.high_c}, edge),
                    excursion_allowed);
    holds.push_back(std::move(hold));
  }
  choose_holds(holds, weld.procedure, weld.record, weld.set, weld.group);
  return holds;
}

std::vector<HoldAlternative> hold_alternatives(const HoldCase& hold, std::optional<double> least_s) {
  const WeldCase& weld = hold.weld;
  std::vector<HoldAlternative> alternatives;
  const auto time_of = [&](const std::vector<HoldCourse>& holds, HoldStage::Count count) {
    return hold_time(holds, hold.index, count, weld.time());
  };
  const std::vector<HoldCourse>& without = weld.holds_by_excursion_allowed.front();
  for (std::size_t i = 0; i < std::size(kExcursionsAllowed_s); ++i) {
    const std::vector<HoldCourse>& holds = weld.holds_by_excursion_allowed[i];
    HoldAlternative one;
    one.excursion_allowed_s = kExcursionsAllowed_s[i];
    one.continuous_s = time_of(holds, HoldStage::Count::continuous).certain_s;
    one.accumulated_s = time_of(holds, HoldStage::Count::accumulated).certain_s;
    if (least_s) {
      const HoldTime time = time_of(holds, hold.specified.count);
      CycleShare share{weld.cycle,
                       time.certain_s,
                       time.possible_s,
                       {time.filled.count, time.filled.seconds},
                       time_of(without, hold.specified.count).certain_s};
      if (const auto shares = cycle_shares(hold, share); !shares.empty()) share = added_up(shares);
      one.verdict = hold_time_verdict(share, *least_s);
      if (one.verdict == Verdict::met)
        one.deepest_k = deepest_filled(weld, holds[hold.index], hold.specified.count);
    }
    alternatives.push_back(one);
  }
  return alternatives;
}

std::vector<std::vector<HoldCourse>> holds_by_excursion_allowed(const WeldCase& weld) {
  std::vector<std::vector<HoldCourse>> all;
  for (const double excursion_allowed_s : kExcursionsAllowed_s)
    all.push_back(
        with_excursion_allowed(weld, weld.holds, RangeEdge::as_asked,
                               {excursion_allowed_s, weld.procedure.evaluation.excursion_allowed.depth}));
  return all;
}

std::vector<InAndOutAlternative> ins_and_outs(const HoldCase& hold) {
  const WeldCase& weld = hold.weld;
  std::vector<InAndOutAlternative> all;
  const HoldPeriods periods = periods_around(weld.holds, hold.index);
  for (std::size_t member = 0; member < weld.group.size(); ++member) {
    const InAndOut times = in_and_out_of_hold(hold.hold.range.channels[member], periods, weld.time());
    all.push_back({weld.name(weld.group[member]), times.in_s, times.out_s});
  }
  return all;
}

}  // namespace soakwright
