// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/requirement_text.h"

#include <variant>

#include "core/units/statement.h"
#include "core/wording/statement_words.h"
#include "core/wording/suspect_words.h"

namespace soakwright {
namespace {

/// The sentences of one requirement.
class RequirementText {
 public:
  RequirementText(const Requirement& requirement, const Procedure& procedure, const PrintedNumbers& say)
      : requirement_(requirement), procedure_(procedure), say_(say), numbers_(say.measured(requirement)) {
    // The limit without its sign: the sentence says whether it is a minimum.
    numbers_.limit = numbers_.limit.substr(numbers_.limit.find(' ') + 1);
  }

  [[nodiscard]] Statements find() const {
    Statements all;
    if (requirement_.measured) {
      all.push_back(measured());
      if (requirement_.verdict == Verdict::not_met && !requirement_.uncertainty && *requirement_.margin < 0.0)
        all.back().arguments.emplace_back(excess());
      if (requirement_.standard_error)
        all.push_back(state(Sentence::standard_error, say_.standard_error(requirement_)));
      if (requirement_.uncertainty) all.push_back(state(Sentence::uncertainty, numbers_.uncertainty));
    }
    all.insert(all.end(), requirement_.remarks.begin(), requirement_.remarks.end());
    return all;
  }

 private:
  [[nodiscard]] std::string name() const { return requirement_.channel.value_or(std::string{}); }
  [[nodiscard]] AtMoment moment() const { return {requirement_.at_s.value_or(0.0)}; }
  [[nodiscard]] FromTo time() const {
    return {requirement_.from_s.value_or(0.0), requirement_.to_s.value_or(0.0)};
  }
  template <typename StageKind>
  [[nodiscard]] const StageKind* stage() const {
    if (requirement_.stage == 0 || requirement_.stage > procedure_.stages.size()) return nullptr;
    return std::get_if<StageKind>(&procedure_.stages[requirement_.stage - 1].specified);
  }
  [[nodiscard]] SpecifiedRange range() const {
    if (const auto* hold = stage<HoldStage>()) return {hold->low, hold->high};
    if (const auto* maintain = stage<MaintainStage>()) return {maintain->low, maintain->high};
    return {};
  }

  [[nodiscard]] Statement measured() const {
    const std::string& value = numbers_.measured;
    const std::string& limit = numbers_.limit;
    switch (requirement_.kind) {
      case RequirementKind::temperature_max:
      case RequirementKind::over:
        return state(Sentence::highest_reading, name(), value, moment(), limit);
      case RequirementKind::start:
        return state(Sentence::first_reading, name(), value, moment(), limit);
      case RequirementKind::end:
        return state(Sentence::last_reading, name(), value, moment(), limit);
      case RequirementKind::gap:
        return state(Sentence::longest_gap, value, time(), limit);
      case RequirementKind::interval:
        return state(Sentence::sampling_interval, value, limit);
      case RequirementKind::thermocouples:
        return state(Sentence::fewest_thermocouples, value, time(), limit);
      case RequirementKind::calibration:
        return state(Sentence::expired_certificates, value);
      case RequirementKind::heating_rate:
        return window(Sentence::steepest_heating);
      case RequirementKind::cooling_rate:
        return window(Sentence::steepest_cooling);
      case RequirementKind::heating_rate_min:
        return state(Sentence::slowest_heating, name(), value, limit);
      case RequirementKind::cooling_rate_min:
        return state(Sentence::slowest_cooling, name(), value, limit);
      case RequirementKind::spread:
        return state(Sentence::widest_spread, name(), requirement_.channel_2.value_or(std::string{}), value,
                     moment(), limit);
      case RequirementKind::hold_time:
        return hold_time();
      case RequirementKind::hold_time_max:
        return state(Sentence::longest_time_at_temperature, name(), Specified{range().low}, value, limit);
      case RequirementKind::excursion_time:
        return state(Sentence::time_out_of_range, range(), value, limit);
      case RequirementKind::edge:
        return edge();
      case RequirementKind::tempering_min:
        return state(Sentence::lowest_tempering, name(), value, limit);
      case RequirementKind::tempering_max:
        return state(Sentence::highest_tempering, name(), value, limit);
      case RequirementKind::maintain:
        return preheat();
    }
    return {};
  }

  [[nodiscard]] Statement window(Sentence sentence) const {
    return state(sentence, name(), numbers_.measured,
                 Duration::of_seconds(requirement_.to_s.value_or(0.0) - requirement_.from_s.value_or(0.0)),
                 moment(), numbers_.limit);
  }

  [[nodiscard]] Statement hold_time() const {
    const bool continuous = requirement_.from_s && requirement_.to_s;
    const HoldStage* hold = stage<HoldStage>();
    if (!requirement_.cycles.empty())
      return state(Sentence::hold_time_over_records, range(), numbers_.measured,
                   Count::of(static_cast<int>(requirement_.cycles.size())), numbers_.limit);
    if (!continuous) return state(Sentence::never_in_range_together, range(), numbers_.limit);
    if (hold != nullptr && hold->count == HoldStage::Count::accumulated)
      return state(Sentence::hold_time_accumulated, range(), numbers_.measured, time(), numbers_.limit);
    return state(Sentence::hold_time_continuous, range(), numbers_.measured, time(), numbers_.limit);
  }

  [[nodiscard]] Statement edge() const {
    const double share = *requirement_.measured;
    const Temperature low = range().low;
    return state(Sentence::lowest_at_edge, name(),
                 Temperature::of(share * low.in(procedure_.unit), procedure_.unit), moment(),
                 numbers_.measured, numbers_.limit);
  }

  [[nodiscard]] Statement preheat() const {
    const auto* maintain = stage<MaintainStage>();
    return state(Sentence::time_out_of_preheat, range(), numbers_.measured,
                 maintain != nullptr ? maintain->during : std::string{});
  }

  /// By how much the limit is missed: the margin's own digits, without its minus sign.
  [[nodiscard]] std::string excess() const {
    return numbers_.margin.substr(numbers_.margin.find_first_of("0123456789"));
  }

  const Requirement& requirement_;
  const Procedure& procedure_;
  const PrintedNumbers& say_;
  MeasuredText numbers_;
};

}  // namespace

std::string requirement_text(const Requirement& requirement, const Procedure& procedure,
                             const PrintedNumbers& say) {
  return words(RequirementText(requirement, procedure, say).find(), say);
}

std::string finding_text(const Finding& finding, const Requirement* requirement, const Procedure& procedure,
                         const PrintedNumbers& say) {
  if (!finding.what.empty() || requirement == nullptr) return words(finding.what, say);
  return requirement_text(*requirement, procedure, say);
}

std::string finding_text(const Finding& finding, const Requirement* requirement,
                         const WordingContext& context) {
  const Analysis& analysis = context.analysis;
  if (finding.suspects.empty() || finding.what.empty() || !analysis.course)
    return finding_text(finding, requirement, *analysis.procedure, context.say);
  // Who is suspect, what it rests on, what follows.
  const Suspect& suspect = analysis.course->suspects[finding.suspects.front()];
  std::string text = words(finding.what.front(), context.say);
  text.append(" ").append(suspect_sentence(suspect, *analysis.record));
  const Statements rest(finding.what.begin() + 1, finding.what.end());
  if (!rest.empty()) text.append(" ").append(words(rest, context.say));
  return text;
}

}  // namespace soakwright
