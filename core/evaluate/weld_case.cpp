#include "core/evaluate/weld_case.h"

#include <cmath>

namespace soakwright {
namespace {

struct KindProperties {
  const char* name;
  QuantityUnit unit;
  bool least;
};

KindProperties facts_of(RequirementKind kind) {
  switch (kind) {
    case RequirementKind::temperature_max:
      return {"temperature-max", QuantityUnit::celsius, false};
    case RequirementKind::start:
      return {"start-temperature", QuantityUnit::celsius, false};
    case RequirementKind::end:
      return {"end-temperature", QuantityUnit::celsius, false};
    case RequirementKind::gap:
      return {"gap", QuantityUnit::seconds, false};
    case RequirementKind::interval:
      return {"sampling-interval", QuantityUnit::seconds, false};
    case RequirementKind::thermocouples:
      return {"thermocouples", QuantityUnit::one, true};
    case RequirementKind::calibration:
      return {"calibration", QuantityUnit::one, false};
    case RequirementKind::heating_rate:
      return {"heating-rate", QuantityUnit::celsius_per_hour, false};
    case RequirementKind::heating_rate_min:
      return {"heating-rate-min", QuantityUnit::celsius_per_hour, true};
    case RequirementKind::cooling_rate:
      return {"cooling-rate", QuantityUnit::celsius_per_hour, false};
    case RequirementKind::cooling_rate_min:
      return {"cooling-rate-min", QuantityUnit::celsius_per_hour, true};
    case RequirementKind::spread:
      return {"spread", QuantityUnit::celsius, false};
    case RequirementKind::hold_time:
      return {"hold-time", QuantityUnit::seconds, true};
    case RequirementKind::hold_time_max:
      return {"hold-time-max", QuantityUnit::seconds, false};
    case RequirementKind::excursion_time:
      return {"excursion-time", QuantityUnit::seconds, false};
    case RequirementKind::over:
      return {"over-temperature", QuantityUnit::celsius, false};
    case RequirementKind::edge:
      return {"edge-temperature", QuantityUnit::one, true};
    case RequirementKind::tempering_min:
      return {"tempering-min", QuantityUnit::one, true};
    case RequirementKind::tempering_max:
      return {"tempering-max", QuantityUnit::one, false};
    case RequirementKind::maintain:
      return {"maintain", QuantityUnit::seconds, false};
  }
  return {"", QuantityUnit::one, false};
}

/// Shares, counts and the tempering parameter are plain numbers: room for binary rounding only.
constexpr double kPlainSlack = 1e-9;

double slack_of(QuantityUnit unit) {
  switch (unit) {
    case QuantityUnit::celsius:
    case QuantityUnit::celsius_per_hour:
      return kTemperatureSlack;
    case QuantityUnit::seconds:
      return kSampleSlack_s;
    case QuantityUnit::one:
      return kPlainSlack;
  }
  return 0.0;
}

}  // namespace

GroupRanges WeldCase::ranges(TemperatureRange range, RangeEdge which) const {
  GroupRanges all;
  all.reserve(group.size());
  for (const std::size_t index : group)
    all.push_back(guard != nullptr ? guard->moved(set.traces[index], range, which) : SourceRanges{range});
  return all;
}

Requirement requirement_for(RequirementKind kind, std::size_t stage, const std::optional<std::string>& weld,
                            double limit) {
  const KindProperties facts = facts_of(kind);
  Requirement requirement;
  requirement.kind = kind;
  requirement.stage = stage;
  requirement.id = (stage == 0 ? std::string{"record"} : "stage-" + std::to_string(stage)) + "." + facts.name;
  requirement.weld = weld;
  requirement.limit = limit;
  requirement.limit_is_least = facts.least;
  requirement.unit = facts.unit;
  return requirement;
}

double decimal_difference(double a, double b) {
  constexpr double kMillionths = 1e6;
  const double whole_a = std::nearbyint(a * kMillionths);
  const double whole_b = std::nearbyint(b * kMillionths);
  const bool decimals = std::fabs(whole_a) < 1e15 && std::fabs(whole_b) < 1e15 &&
                        whole_a / kMillionths == a && whole_b / kMillionths == b;
  return decimals ? (whole_a - whole_b) / kMillionths : a - b;
}

void set_measured(Requirement& requirement, double measured) {
  requirement.measured = measured;
  requirement.margin = requirement.limit_is_least ? decimal_difference(measured, requirement.limit)
                                                  : decimal_difference(requirement.limit, measured);
}

double margin_after(const Requirement& requirement, double measured, double uncertainty) {
  const double margin = requirement.limit_is_least ? decimal_difference(measured, requirement.limit)
                                                   : decimal_difference(requirement.limit, measured);
  return margin - uncertainty;
}

void set_measured(Requirement& requirement, double measured, double uncertainty) {
  requirement.measured = measured;
  if (!std::isfinite(uncertainty)) return;
  requirement.uncertainty = uncertainty;
  requirement.margin = margin_after(requirement, measured, uncertainty);
}

Verdict held_to_limit(const Requirement& requirement, double measured, double uncertainty) {
  const double worse = requirement.limit_is_least ? -uncertainty : uncertainty;
  if (!beyond_limit(requirement, measured + worse)) return Verdict::met;
  return beyond_limit(requirement, measured - worse) ? Verdict::not_met : Verdict::inconclusive;
}

bool beyond_limit(const Requirement& requirement, double measured) {
  const double slack = slack_of(requirement.unit);
  return requirement.limit_is_least ? measured < requirement.limit - slack
                                    : measured > requirement.limit + slack;
}

Finding finding_on(const Requirement& requirement, Finding::Kind kind) {
  Finding finding;
  finding.requirement = requirement.id;
  finding.weld = requirement.weld;
  finding.kind = kind;
  return finding;
}

}  // namespace soakwright
