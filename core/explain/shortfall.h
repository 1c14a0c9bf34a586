// SPDX-License-Identifier: GPL-3.0-or-later
// For a requirement that is not met, or not for certain: by how much, and what that means at the work.
#pragma once

#include "core/evaluate/requirement.h"
#include "core/procedure/procedure.h"
#include "core/units/statement.h"

namespace soakwright {

/// Empty where the requirement is met.
Statements shortfall(const Procedure& procedure, const Requirement& requirement);

}  // namespace soakwright
