// SPDX-License-Identifier: GPL-3.0-or-later
// What a drafted procedure says about itself: comments above its parts, in plain English, each line short
// enough to be read in an editor.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/procedure/rules/published_rule.h"
#include "core/procedure/rules/rule_draft.h"

namespace soakwright {

/// Of the file, where it comes from a rule and where it is proposed from a log.
std::vector<std::string> drafted_head(const PublishedRule& rule, const std::string& material);
std::vector<std::string> proposed_head(const std::string& log);
/// Of `[record]`.
std::vector<std::string> record_comments(const Procedure& procedure, bool proposed);
/// Of one stage: its limits worked out for the procedure's thickness, how far the source can be trusted, and
/// what the rule's author remarks.
std::vector<std::string> stage_comments(const Procedure& procedure, const Stage& stage,
                                        const DraftedStage& drafted);

/// The source of a hold that the user gave: `spread_of_rule` where the rule limits the spread in it.
std::string given_hold_source(const PublishedRule& rule, bool spread_of_rule);
std::string proposal_title(const std::string& log);
std::string proposal_source();
/// "seen in print"; "from memory, check against your edition"; "proposed from a recorded cycle, not a
/// requirement".
std::string flag_text(Provenance::Flag flag);

}  // namespace soakwright
