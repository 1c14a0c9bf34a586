// SPDX-License-Identifier: GPL-3.0-or-later
// Everything known about one record, as values that are shared and never change.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/evaluate/verdict.h"
#include "core/phases/phase.h"
#include "core/procedure/job/job.h"
#include "core/procedure/procedure.h"
#include "core/procedure/review/review.h"
#include "core/record/record.h"

namespace soakwright {

struct PreparedTraces;

/// A record of the job's welds before this one, evaluated by itself against the same procedure.
struct PreviousRecord {
  int cycle = 1;
  std::shared_ptr<const Record> record;
  std::shared_ptr<const Job> job;
  std::shared_ptr<const Verdicts> verdicts;
  std::shared_ptr<const PreparedTraces> ground = nullptr;
  std::shared_ptr<const Course> course = nullptr;  ///< its suspects keep readings out of its evaluation too
  std::string log_path = {};                       ///< from which the record was read
};

/// `job`, `review` may be null; `procedure` and `verdicts` are null where nothing is evaluated (`inspect`).
struct Analysis {
  std::shared_ptr<const Record> record;
  std::shared_ptr<const Course> course;
  std::shared_ptr<const Job> job;
  std::shared_ptr<const Procedure> procedure;
  std::shared_ptr<const Review> review;
  std::shared_ptr<const Verdicts> verdicts;
  std::shared_ptr<const PreparedTraces> ground = nullptr;  ///< the core's own, for evaluation again
  std::vector<PreviousRecord> previous_records = {};  ///< records of the same welds before this one, in order
  /// Of what result_json() gives, which a review must name and a report prints; empty where there is neither.
  std::string result_sha256 = {};
  // What the user named, so that a report can hold the files themselves and be made again from them.
  std::string log_path = {};                 ///< from which the record was read
  std::optional<std::string> job_text = {};  ///< that stood in for the job's file
  std::optional<DateOrder> dates = {};       ///< given beside the job
};

}  // namespace soakwright
