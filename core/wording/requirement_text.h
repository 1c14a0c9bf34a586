// SPDX-License-Identifier: GPL-3.0-or-later
// A requirement or a finding in words: what was measured, where, when, against which limit, and by how much
// it is missed.
#pragma once

#include <string>

#include "core/evaluate/requirement.h"
#include "core/procedure/procedure.h"
#include "core/wording/printed_numbers.h"
#include "core/wording/wording_context.h"

namespace soakwright {

/// One or more whole sentences, made from the requirement's figures; the numbers are those of its row in the
/// table.
std::string requirement_text(const Requirement& requirement, const Procedure& procedure,
                             const PrintedNumbers& say);
/// A finding in words: its own statements, or those of its requirement; `requirement` is null for a note on
/// the record. Of a note on suspicions it says all but what they rest on.
std::string finding_text(const Finding& finding, const Requirement* requirement, const Procedure& procedure,
                         const PrintedNumbers& say);
/// The whole of it, also of a note on suspicions.
std::string finding_text(const Finding& finding, const Requirement* requirement,
                         const WordingContext& context);

}  // namespace soakwright
