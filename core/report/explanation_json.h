// A finding's explanation and a first drift, in the result.
#pragma once

#include <optional>

#include "core/explain/explanation.h"
#include "core/explain/first_drift.h"
#include "core/report/result_members.h"

namespace soakwright {

/// `explanation` of a finding: null for a note.
void write_explanation(Members& members, const std::optional<Explanation>& explanation);
/// `first_drift`: null where nothing is missed. The record's own names its requirement.
void write_drift(Members& members, const FirstDrift* drift, const Requirement* requirement);

}  // namespace soakwright
