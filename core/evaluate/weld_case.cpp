// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/evaluate/weld_case.h"

#include <cmath>

namespace soakwright {
namespace {

/// Shares, counts and the tempering parameter are plain numbers: room for binary rounding only.
constexpr double kPlainSlack = 1e-9;

double slack_of(QuantityKind quantity) {
  switch (quantity) {
    case QuantityKind::temperature:
    case QuantityKind::difference:
    case QuantityKind::rate:
      return kTemperatureSlack;
    case QuantityKind::duration:
      return kSampleSlack_s;
    case QuantityKind::ratio:
    case QuantityKind::count:
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
  Requirement requirement;
  requirement.kind = kind;
  requirement.stage = stage;
  requirement.id = stage == 0 ? "record." : "stage-" + std::to_string(stage) + ".";
  requirement.id += facts_of(kind).id;
  requirement.weld = weld;
  requirement.limit = limit;
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
  requirement.margin = requirement.limit_is_least() ? decimal_difference(measured, requirement.limit)
                                                    : decimal_difference(requirement.limit, measured);
}

double margin_after(const Requirement& requirement, double measured, double uncertainty) {
  const double margin = requirement.limit_is_least() ? decimal_difference(measured, requirement.limit)
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
  const double worse = requirement.limit_is_least() ? -uncertainty : uncertainty;
  if (!beyond_limit(requirement, measured + worse)) return Verdict::met;
  return beyond_limit(requirement, measured - worse) ? Verdict::not_met : Verdict::inconclusive;
}

bool beyond_limit(const Requirement& requirement, double measured) {
  const double slack = slack_of(requirement.quantity());
  return requirement.limit_is_least() ? measured < requirement.limit - slack
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
