// SPDX-License-Identifier: GPL-3.0-or-later
// The published rules as a page of text: what each is for, where it comes from and how far it can be trusted.
#pragma once

#include <string>
#include <vector>

#include "app/cli/printing/page_text.h"
#include "core/procedure/rules/published_rule.h"

namespace soakwright::cli {

std::string rule_list(const std::vector<PublishedRule>& rules, const PageStyle& style);

}  // namespace soakwright::cli
