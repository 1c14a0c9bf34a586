// The phases of a record, with no procedure: heat, hold, cool and idle.
#pragma once

#include <vector>

#include "core/phases/phase.h"
#include "core/record/record.h"

namespace soakwright {

std::vector<Phase> phases_of(const Record& record);

}  // namespace soakwright
