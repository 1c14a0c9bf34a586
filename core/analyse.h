// SPDX-License-Identifier: GPL-3.0-or-later
// The main path: a log, a procedure and a job in, everything that can be said out.
//
// 1. read_record(): the log, as the job says            -> Record
// 2. course_of(): what the record shows by itself       -> Course
// 3. evaluate(): record against procedure                  -> Verdicts
// Before it the job, the procedure and the review are read; what is wrong with any of them is said together.
// The pieces can be called again on their own: after a changed limit only evaluate() runs.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/evaluate/analysis.h"
#include "core/problems/problem.h"
#include "core/procedure/job/job.h"
#include "core/procedure/procedure.h"
#include "core/system/watch.h"

namespace soakwright {

/// The files of one of the job's previous records, in place of the paths that the job names.
struct PreviousFiles {
  std::string log;
  std::string job;  ///< empty where the job names none for that record
};

/// The files of one analysis, as the user named them. What is empty is taken from the job where that names
/// it.
struct Request {
  std::string log;
  std::string procedure;
  std::string job;
  /// Stands in for what the job file says, where changes to it are not written yet.
  std::optional<std::string> job_text;
  std::string review;
  std::optional<DateOrder> dates;  ///< wins over the job's
  /// One for each previous record of the job, in its order: nothing else is read then. Without it the job's
  /// own paths count.
  std::optional<std::vector<PreviousFiles>> previous_files = std::nullopt;
  ImportChoices import = {};  ///< each key that is given wins over the job's
  /// Stands in for what the procedure file says, where changes to it are not written yet.
  std::optional<std::string> procedure_text = std::nullopt;
};

// No exception leaves these: lack of memory and faults of the program itself are problems too
// (ProblemKind::fault).

/// Reads the log, with the job where there is one, and finds its phases; the procedure is not needed.
Result<Analysis> inspect(const Request& request, const Watch& watch = {});
/// The whole path.
Result<Analysis> check(const Request& request, const Watch& watch = {});
/// The same record against another procedure: touches neither file nor phases.
Result<Analysis> evaluate_again(const Analysis& analysis, std::shared_ptr<const Procedure> procedure);

}  // namespace soakwright
