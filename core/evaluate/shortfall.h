// For a requirement that is not met, or not for certain: one sentence on what would have had to be different.
#pragma once

#include <string>

#include "core/evaluate/requirement.h"
#include "core/procedure/procedure.h"
#include "core/record/record.h"

namespace soakwright {

/// Empty where the requirement is met.
std::string shortfall(const Record& record, const Procedure& procedure, const Requirement& requirement);

}  // namespace soakwright
