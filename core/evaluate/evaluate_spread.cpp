// The spread of a stage as a requirement; heat, cool and hold stages share it.
#include <fmt/format.h>

#include "core/evaluate/evaluated_reading.h"
#include "core/evaluate/sentences.h"
#include "core/evaluate/stage_evaluations.h"

namespace soakwright {
namespace {

void add_places(const WeldCase& weld, const Requirement& requirement, const std::vector<WideTime>& places) {
  for (const WideTime& place : places) {
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

std::string say_widest(const WeldCase& weld, const MeasuredSpread& widest) {
  return fmt::format("at {}: {} above {} by {}", say_moment(weld.record, widest.at_s),
                     weld.name(widest.hottest), weld.name(widest.coldest), say_kelvin(widest.kelvin));
}

}  // namespace

bool has_spread_requirement(const WeldCase& weld, const Stage& stage, std::optional<double> within_m) {
  if (can_compare(weld.record, weld.set, weld.group, within_m)) return true;
  Finding note;
  note.weld = weld.weld;
  note.text = weld.group.size() < 2
                  ? fmt::format("stage {}: `spread_max` is not evaluated, since {} thermocouple is evaluated",
                                stage.number, weld.group.empty() ? "no" : "only one")
                  : fmt::format(
                        "stage {}: `spread_max` is not evaluated, since no two evaluated "
                        "thermocouples are within {:.1f} m of each other",
                        stage.number, within_m.value_or(0.0));
  weld.out.findings.push_back(std::move(note));
  return false;
}

void add_spread(const WeldCase& weld, Requirement& requirement, const Spread& spread,
                const SpreadGaps& gaps) {
  if (!spread.widest) {
    requirement.verdict = Verdict::inconclusive;
    requirement.text = gaps.not_measured;
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
  const bool another = spread.largest && spread.largest->kelvin > widest.kelvin + kTemperatureSlack;
  requirement.text = fmt::format("{} {}; at most {}", another ? "nearest to the limit with U" : "widest",
                                 say_widest(weld, widest), say_kelvin(requirement.limit)) +
                     say_uncertainty(weld, requirement);
  if (another) requirement.text += "; widest as measured " + say_widest(weld, *spread.largest);
  if (spread.surely)
    requirement.verdict = Verdict::not_met;
  else if (beyond_limit(requirement, widest.held_k()))
    requirement.verdict = Verdict::inconclusive;
  else if (!gaps.unseen.empty())
    requirement.verdict = Verdict::inconclusive;
  else
    requirement.verdict = Verdict::met;
  if (requirement.verdict == Verdict::inconclusive && !gaps.unseen.empty())
    requirement.text += "; " + gaps.unseen;
  add_places(weld, requirement, spread.places);
}

}  // namespace soakwright
