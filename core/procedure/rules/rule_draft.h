// SPDX-License-Identifier: GPL-3.0-or-later
// A procedure from a published rule, for one thickness and material.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/procedure/procedure.h"
#include "core/procedure/rules/published_rule.h"

namespace soakwright {

/// A hold that the user gives, where the rule has none.
struct OpenHold {
  Temperature low;
  std::optional<Temperature> high;
  double time_min_s = 0.0;
};

struct DraftChoices {
  std::optional<Thickness> thickness;
  std::string material;                           ///< empty: none is given
  std::optional<TemperatureDifference> lower_by;  ///< a hold that much below the usual temperature
  std::optional<OpenHold> hold;
};

/// What a reader of the draft must know about one stage, as facts.
struct DraftedStage {
  std::optional<std::string> remark;
  /// The rule has other limits for other thicknesses, which no rule of the procedure format expresses: the
  /// limits are those for this one.
  std::optional<Thickness> worked_out_for;
  std::optional<TemperatureDifference> lower_by;
  bool hold_by_user = false;  ///< range and time are the user's
};

struct Draft {
  Procedure procedure;
  std::vector<DraftedStage> stages;  ///< one for each of the procedure's
};

/// The stages of `rule` that are for this thickness and material, in the rule's order and unit. A thickness
/// or material that the rule does not cover is a problem; nothing is extrapolated.
Result<Draft> draft_from(const PublishedRule& rule, const DraftChoices& choices);

}  // namespace soakwright
