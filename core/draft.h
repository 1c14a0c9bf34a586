// SPDX-License-Identifier: GPL-3.0-or-later
// Drafting: from a published rule, or from what a log shows, to the text of a procedure file.
//
// 1. read_rule_folders()   the rules that there are                   (core/procedure/rules/rule_file.h)
// 2. draft_from()          rule, thickness and material -> Procedure  (core/procedure/rules/rule_draft.h)
//    proposed_procedure()  or what a record shows -> Procedure        (core/proposed_procedure.h)
// 3. stage_comments()      what each stage means, in plain English    (core/wording/draft_comments.h)
// 4. procedure_text()      TOML, which is read back before it is handed out
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/analyse.h"
#include "core/problems/problem.h"
#include "core/procedure/rules/published_rule.h"
#include "core/procedure/rules/rule_file.h"
#include "core/units/temperature.h"
#include "core/units/thickness.h"

namespace soakwright {

/// What is asked of a rule, as a user types it.
struct DraftRequest {
  std::string rule;                    ///< its name
  std::optional<Thickness> thickness;  ///< needed where the rule depends on it
  std::string material;                ///< needed where the rule has materials
  std::optional<double> lower_by;      ///< a lower holding temperature, in the rule's unit
  std::string hold, hold_time;  ///< "600-640" in the unit of the draft, "90 min"; where the rule has none
  std::optional<TemperatureUnit> unit;  ///< of the draft; none: the rule's own
};

// No exception leaves these.

/// The text of a procedure file. Nothing is drafted while any rule of the shelf is unsound or two have one
/// name.
Result<std::string> draft_procedure(const RuleShelf& shelf, const DraftRequest& request);

/// The text of a procedure file with generous round limits for what the log shows: a proposal to be edited,
/// and marked so. `request` names the log and, where there is one, the job.
Result<std::string> propose_procedure(const Request& request, std::optional<TemperatureUnit> unit);
/// The same for a record that is open: no file is read.
Result<std::string> propose_procedure(const Analysis& analysis, std::optional<TemperatureUnit> unit);

}  // namespace soakwright
