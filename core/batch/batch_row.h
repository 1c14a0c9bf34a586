// SPDX-License-Identifier: GPL-3.0-or-later
// One record of a batch in a line.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/evaluate/requirement.h"

namespace soakwright {

/// What a summary shows of one record.
struct BatchRow {
  std::string log, job;  ///< as the results have them
  std::optional<Verdict> verdict;
  std::size_t requirements = 0, met = 0, not_met = 0, inconclusive = 0;
  std::string worst;                  ///< the first requirement of the worst verdict, where not all are met
  std::string worst_text;             ///< its sentence
  std::vector<std::string> problems;  ///< what kept it from being evaluated, or its report from being written
  int exit_code = 0;                  ///< of `check` for this record alone
};

}  // namespace soakwright
