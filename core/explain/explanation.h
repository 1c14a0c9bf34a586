// A finding explained to somebody who is learning: what was asked and why such a limit exists, what the
// record shows, what usually causes it, and what to look at first.
//
// The words are our own. What a standard says is marked with its name; the rest is common practice, no
// source. Decides nothing, and knows no more of the run than the finding does.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/evaluate/requirement.h"
#include "core/procedure/procedure.h"

namespace soakwright {

/// Said behind what no standard stands for.
inline constexpr const char* kCommonPractice = "common practice, no source";

struct Explanation {
  std::string asked;                ///< the limit, in words
  std::string why;                  ///< why there is such a limit
  std::string why_source;           ///< a standard, or kCommonPractice
  std::string shown;                ///< what the record shows: the finding's own sentence
  std::vector<std::string> causes;  ///< what usually lies behind it
  std::string look_first;           ///< where to look before anything else
  std::string would_help;           ///< of what is inconclusive: what would settle it; else empty
  std::string mark;                 ///< where causes, look_first and would_help come from
};

/// Nothing for a note, and for a finding without its requirement.
std::optional<Explanation> explain(const Finding& finding, const Requirement* requirement,
                                   const Procedure& procedure);

}  // namespace soakwright
