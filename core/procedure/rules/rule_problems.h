// SPDX-License-Identifier: GPL-3.0-or-later
// What can be wrong with a published rule, and with the draft that is to be made of it, in words.
#pragma once

#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/problems/problem_words.h"
#include "core/procedure/rules/published_rule.h"
#include "core/procedure/toml/table_reader.h"

namespace soakwright::rule_problems {

// Of a rule file.
ProblemWords not_a_list_of_names(const FoundValue& found);
ProblemWords bad_name(const FoundValue& found);
ProblemWords unknown_material(const std::string& material, const std::vector<std::string>& known);
ProblemWords material_without_stage(const std::string& material);
ProblemWords empty_thickness_range();
ProblemWords two_lower_bounds();
ProblemWords lower_by_of_no_hold();
ProblemWords no_stage();
ProblemWords hold_beside_open_hold();
Problem folder_not_readable(const std::string& folder);
Problem two_of_one_name(const std::string& name, const std::string& first, const std::string& second);

// Of a draft.
Problem no_such_rule(const std::string& name, const std::vector<std::string>& names);
Problem thickness_missing(const PublishedRule& rule);
Problem thickness_not_covered(const PublishedRule& rule, Thickness thickness);
Problem material_missing(const PublishedRule& rule);
Problem material_not_covered(const PublishedRule& rule, const std::string& material);
Problem material_not_needed(const PublishedRule& rule);
Problem lower_by_not_covered(const PublishedRule& rule, const std::string& material, double lower_by);
Problem hold_missing(const PublishedRule& rule, const std::string& material);
Problem hold_not_needed(const PublishedRule& rule, const std::string& material);
Problem hold_too_hot(const PublishedRule& rule, Temperature highest);
Problem hold_unreadable(const std::string& text);
Problem hold_time_unreadable(const std::string& text);
Problem hold_upside_down(const std::string& text);
Problem nothing_to_propose(const std::string& log);
Problem draft_not_readable(const std::string& reason);

}  // namespace soakwright::rule_problems
