// SPDX-License-Identifier: GPL-3.0-or-later
// Files of published rules: TOML text to PublishedRule, and the folders in which they are.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/problems/problem.h"
#include "core/procedure/rules/published_rule.h"

namespace soakwright {

/// All problems of the file come in one answer, as of a procedure. Beyond a procedure's checks: source,
/// edition, clause and flag are there, every material of a stage is one of the rule's, and every material has
/// a stage.
Result<PublishedRule> read_rule(const std::string& path);
/// The same from text; `file` names it in problems.
Result<PublishedRule> parse_rule(std::string_view text, const std::string& file);

/// The rules of several folders, by name.
struct RuleShelf {
  std::vector<PublishedRule> rules;
  Problems problems;  ///< of files that are no sound rule, and of rules with one name
};

/// Every `.toml` file of the folders. A folder that cannot be read is a cannot_open problem.
RuleShelf read_rule_folders(const std::vector<std::string>& folders);

}  // namespace soakwright
