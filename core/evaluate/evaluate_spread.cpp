// A measured spread as a requirement; heat, cool and hold stages share it.
#include <fmt/format.h>

#include "core/evaluate/evaluated_reading.h"
#include "core/evaluate/sentences.h"
#include "core/evaluate/stage_evaluations.h"

namespace soakwright {

void add_spread(const WeldCase& weld, Requirement& requirement, const Spread& spread, bool something_unseen) {
  if (!spread.widest) {
    requirement.verdict = Verdict::inconclusive;
    requirement.text = "no spread could be measured: no row of the log has two known channels there";
    Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
    finding.text = requirement.text;
    weld.out.findings.push_back(std::move(finding));
    return;
  }
  const MeasuredSpread& widest = *spread.widest;
  if (weld.guard != nullptr)
    set_measured(requirement, widest.kelvin, widest.uncertainty_k);
  else
    set_measured(requirement, widest.kelvin);
  requirement.alternatives.spread = SpreadAlternative{widest.hottest_c, widest.coldest_c};
  requirement.channel = weld.name(widest.hottest);
  requirement.channel_2 = weld.name(widest.coldest);
  requirement.at_s = widest.at_s;
  requirement.text = fmt::format(
      "widest at {}: {} above {} by {}; at most {}", say_moment(weld.record, widest.at_s),
      *requirement.channel, *requirement.channel_2, say_kelvin(widest.kelvin), say_kelvin(requirement.limit));
  requirement.text += say_uncertainty(weld, requirement);
  if (spread.surely)
    requirement.verdict = Verdict::not_met;
  else
    requirement.verdict =
        something_unseen || beyond_limit(requirement, widest.held_k()) ? Verdict::inconclusive : Verdict::met;
  for (const WideTime& place : spread.places) {
    Finding finding =
        finding_on(requirement, place.surely ? Finding::Kind::not_met : Finding::Kind::inconclusive);
    finding.channel = weld.name(place.widest.hottest);
    finding.from_s = place.time.first;
    finding.to_s = place.time.second;
    finding.extreme = place.widest.kelvin;
    finding.text = fmt::format("{} was above {} by up to {}", *finding.channel,
                               weld.name(place.widest.coldest), say_kelvin(place.widest.kelvin));
    if (!place.surely)
      finding.text += fmt::format(", within U = {} of the limit", say_kelvin(place.widest.uncertainty_k));
    weld.out.findings.push_back(std::move(finding));
  }
}

}  // namespace soakwright
