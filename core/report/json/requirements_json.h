// SPDX-License-Identifier: GPL-3.0-or-later
// Requirements and findings in the result, each with its figures and its texts.
#pragma once

#include <vector>

#include "core/explain/first_deviation.h"
#include "core/report/json/result_members.h"
#include "core/wording/requirement_text.h"

namespace soakwright {

/// What it is, its limit and what was measured: the members with which each requirement begins.
void write_figures(Members& members, const Requirement& requirement);
/// `requirements`: `deviations` are the record's, by index of the requirement.
void write_requirements(Members& members, const std::vector<Requirement>& requirements,
                        const Procedure& procedure, const std::vector<FirstDeviation>& deviations,
                        const PrintedNumbers& say);
/// `findings`, each with its explanation.
void write_findings(Members& members, const Verdicts& verdicts, const WordingContext& context);

}  // namespace soakwright
