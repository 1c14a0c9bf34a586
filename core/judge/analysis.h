// Everything known about one record, as values that are shared and never change.
#pragma once

#include <memory>
#include <vector>

#include "core/judge/verdict.h"
#include "core/phases/phase.h"
#include "core/procedure/job.h"
#include "core/procedure/procedure.h"
#include "core/procedure/review.h"
#include "core/record/record.h"

namespace soakwright {

struct Groundwork;

/// A record of the job's welds before this one, judged by itself against the same procedure.
struct EarlierRecord {
  int cycle = 1;
  std::shared_ptr<const Record> record;
  std::shared_ptr<const Job> job;
  std::shared_ptr<const Verdicts> verdicts;
  std::shared_ptr<const Groundwork> ground = nullptr;
};

/// `job`, `review` may be null; `procedure` and `verdicts` are null where nothing was asked (`look`).
struct Analysis {
  std::shared_ptr<const Record> record;
  std::shared_ptr<const Course> course;
  std::shared_ptr<const Job> job;
  std::shared_ptr<const Procedure> procedure;
  std::shared_ptr<const Review> review;
  std::shared_ptr<const Verdicts> verdicts;
  std::shared_ptr<const Groundwork> ground = nullptr;  ///< the core's own, for judging again
  std::vector<EarlierRecord> earlier = {};  ///< records of the same welds before this one, in order
};

}  // namespace soakwright
