// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/job/import_problems.h"

namespace soakwright {

Problem unlisted_without_job() {
  return {ProblemKind::usage, "--unlisted", 0,
          "no job lists a thermocouple, so that all columns would be off",
          "name a job with [[thermocouple]] tables, or leave out the option"};
}

}  // namespace soakwright
