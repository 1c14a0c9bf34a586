// What a hold's time would have come to under another grace, and when each thermocouple came and went.
#include "core/judge/hold_case.h"
#include "core/measure/hold_time.h"

namespace soakwright {
namespace {

constexpr double kGraces_s[] = {0.0, 120.0, 300.0, 600.0};

/// The weld's holds with stretches filled by another grace; the channels' own spans stay behind.
std::vector<HoldCourse> with_grace(const WeldCase& weld, const Grace& grace) {
  std::vector<HoldCourse> holds;
  for (const HoldCourse& as_judged : weld.holds) {
    HoldCourse hold;
    hold.stage = as_judged.stage;
    hold.low_c = as_judged.low_c;
    hold.high_c = as_judged.high_c;
    hold.band.spans = as_judged.band.spans;
    hold.band.lone_outs = as_judged.band.lone_outs;
    fill_departures(hold.band, weld.set, weld.group, same_band(weld.group, {hold.low_c, hold.high_c}), grace);
    holds.push_back(std::move(hold));
  }
  choose_holds(holds, weld.procedure, weld.record, weld.set, weld.group);
  return holds;
}

}  // namespace

std::vector<HoldBasis> hold_bases(const HoldCase& hold) {
  const WeldCase& weld = hold.weld;
  std::vector<HoldBasis> bases;
  for (std::size_t i = 0; i < std::size(kGraces_s); ++i) {
    const std::vector<HoldCourse>& holds = weld.holds_by_grace[i];
    const auto certain = [&](HoldStage::Count count) {
      return hold_time(holds, hold.index, count, weld.time()).certain_s;
    };
    bases.push_back(
        {kGraces_s[i], certain(HoldStage::Count::continuous), certain(HoldStage::Count::accumulated)});
  }
  return bases;
}

std::vector<std::vector<HoldCourse>> holds_under_graces(const WeldCase& weld) {
  std::vector<std::vector<HoldCourse>> all;
  for (const double grace_s : kGraces_s)
    all.push_back(with_grace(weld, {grace_s, weld.procedure.judging.grace.depth}));
  return all;
}

std::vector<InAndOutBasis> ins_and_outs(const HoldCase& hold) {
  const WeldCase& weld = hold.weld;
  const Span around = between_spans(weld.holds, hold.index, weld.time());
  std::vector<InAndOutBasis> all;
  for (std::size_t member = 0; member < weld.group.size(); ++member) {
    const InAndOut times = in_and_out(hold.hold.band.channels[member], around);
    all.push_back({weld.name(weld.group[member]), times.in_s, times.out_s});
  }
  return all;
}

}  // namespace soakwright
