// SPDX-License-Identifier: GPL-3.0-or-later
// A finding explained to somebody who is learning: what is required and why such a limit exists, what the
// record shows, what usually causes it, and what to check first.
//
// The words are our own. What a standard says is marked with its name; the rest is common practice, no
// source. Decides nothing, and knows no more of the run than the finding does.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/evaluate/requirement.h"
#include "core/procedure/procedure.h"
#include "core/wording/printed_numbers.h"

namespace soakwright {

struct Explanation {
  std::string required;             ///< the limit, in words
  std::string why;                  ///< why there is such a limit
  std::string why_source;           ///< a standard, or "common practice, no source"
  std::string shown;                ///< what the record shows: the finding's own text
  std::vector<std::string> causes;  ///< what is usually behind it
  std::string look_first;           ///< what to check before anything else
  std::string would_help;           ///< of what is inconclusive: what would settle it; else empty
  std::string mark;                 ///< the source of causes, look_first and would_help

  [[nodiscard]] bool why_is_common_practice() const { return why_source == mark; }
};

/// Returns nullopt for a note, and for a finding without its requirement. `shown` is the finding's text.
std::optional<Explanation> explain(const Finding& finding, const Requirement* requirement,
                                   const Procedure& procedure, const PrintedNumbers& say,
                                   const std::string& shown);

}  // namespace soakwright
