// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/request_problems.h"

#include "core/problems/command_line_problems.h"

namespace soakwright::request_problems {

Problem no_log(const std::string& job) {
  return {ProblemKind::usage, job, 0, "no log is named", "give one, or a job with the key `log`"};
}

Problem no_procedure(const std::string& job) {
  return helped_by({ProblemKind::usage, job, 0, "no procedure is named", {}},
                   CommandLineHelp::give_procedure);
}

Problem review_without_procedure(const std::string& review) {
  return {ProblemKind::usage, review, 0, "a review is of a verdict, and no procedure is named",
          "name the procedure, or leave out the review"};
}

}  // namespace soakwright::request_problems
