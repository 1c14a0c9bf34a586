// Everything known about one record, as values that are shared and never change.
#pragma once

#include <memory>

#include "core/judge/verdict.h"
#include "core/phases/phase.h"
#include "core/procedure/job.h"
#include "core/procedure/procedure.h"
#include "core/procedure/review.h"
#include "core/record/record.h"

namespace soakwright {

struct Groundwork;

/// `job`, `review` may be null; `procedure` and `verdicts` are null where nothing was asked (`look`).
struct Analysis {
  std::shared_ptr<const Record> record;
  std::shared_ptr<const Course> course;
  std::shared_ptr<const Job> job;
  std::shared_ptr<const Procedure> procedure;
  std::shared_ptr<const Review> review;
  std::shared_ptr<const Verdicts> verdicts;
  std::shared_ptr<const Groundwork> ground = nullptr;  ///< the core's own, for judging again
};

}  // namespace soakwright
