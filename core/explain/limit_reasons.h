// What there is to know about each kind of limit, whatever the run.
#pragma once

#include <vector>

#include "core/evaluate/requirement.h"

namespace soakwright {

struct LimitReason {
  RequirementKind kind = RequirementKind::temperature_max;
  const char* asks = "";        ///< "No thermocouple on the work above this, ever"
  const char* why = "";         ///< why such a limit exists
  const char* why_source = "";  ///< a standard, or kCommonPractice
  std::vector<const char*> causes;
  const char* look_first = "";
  const char* would_help = "";  ///< what would settle it where the record cannot
};

/// There is one for every kind.
const LimitReason& reason_for(RequirementKind kind);

}  // namespace soakwright
