// SPDX-License-Identifier: GPL-3.0-or-later
// What can be wrong with a published rule, and with what is asked of it, in words.
#pragma once

#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/procedure/rules/published_rule.h"

namespace soakwright::rule_problems {

/// What was found, and what helps.
struct Words {
  std::string what, help;
};

// Of a rule file.
extern const char* const kNamesHelp;
extern const char* const kThisStage;
extern const char* const kThisGivenHold;
Words bad_name(const std::string& name);
Words unknown_material(const std::string& material, const std::vector<std::string>& known);
Words material_without_stage(const std::string& material);
Words empty_thickness_range();
Words two_lower_bounds();
Words lower_by_of_no_hold();
Words no_stage();
Words hold_beside_open_hold();
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
