// What a hold's time would have come to under another excursion_allowed, and when each thermocouple came and
// went.
#include "core/evaluate/hold_case.h"
#include "core/measure/hold_time.h"

namespace soakwright {
namespace {

constexpr double kExcursionsAllowed_s[] = {0.0, 120.0, 300.0, 600.0};

/// The weld's holds with in_range filled by another excursion_allowed; the channels' own spans stay behind.
std::vector<HoldCourse> with_excursion_allowed(const WeldCase& weld,
                                               const ExcursionAllowed& excursion_allowed) {
  std::vector<HoldCourse> holds;
  for (const HoldCourse& as_evaluated : weld.holds) {
    HoldCourse hold;
    hold.stage = as_evaluated.stage;
    hold.low_c = as_evaluated.low_c;
    hold.high_c = as_evaluated.high_c;
    hold.range.spans = as_evaluated.range.spans;
    hold.range.lone_outs = as_evaluated.range.lone_outs;
    fill_excursions(hold.range, weld.set, weld.group, same_range(weld.group, {hold.low_c, hold.high_c}),
                    excursion_allowed);
    holds.push_back(std::move(hold));
  }
  choose_holds(holds, weld.procedure, weld.record, weld.set, weld.group);
  return holds;
}

}  // namespace

std::vector<HoldAlternative> hold_alternatives(const HoldCase& hold) {
  const WeldCase& weld = hold.weld;
  std::vector<HoldAlternative> bases;
  for (std::size_t i = 0; i < std::size(kExcursionsAllowed_s); ++i) {
    const std::vector<HoldCourse>& holds = weld.holds_by_excursion_allowed[i];
    const auto certain = [&](HoldStage::Count count) {
      return hold_time(holds, hold.index, count, weld.time()).certain_s;
    };
    bases.push_back({kExcursionsAllowed_s[i], certain(HoldStage::Count::continuous),
                     certain(HoldStage::Count::accumulated)});
  }
  return bases;
}

std::vector<std::vector<HoldCourse>> holds_by_excursion_allowed(const WeldCase& weld) {
  std::vector<std::vector<HoldCourse>> all;
  for (const double excursion_allowed_s : kExcursionsAllowed_s)
    all.push_back(with_excursion_allowed(
        weld, {excursion_allowed_s, weld.procedure.evaluation.excursion_allowed.depth}));
  return all;
}

std::vector<InAndOutAlternative> ins_and_outs(const HoldCase& hold) {
  const WeldCase& weld = hold.weld;
  const Span around = between_spans(weld.holds, hold.index, weld.time());
  std::vector<InAndOutAlternative> all;
  for (std::size_t member = 0; member < weld.group.size(); ++member) {
    const InAndOut times = in_and_out(hold.hold.range.channels[member], around);
    all.push_back({weld.name(weld.group[member]), times.in_s, times.out_s});
  }
  return all;
}

}  // namespace soakwright
