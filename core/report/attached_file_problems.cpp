// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/attached_file_problems.h"

namespace soakwright {

Problem changed_since_evaluated(const std::string& path) {
  return {ProblemKind::bad_input, path, 0, "the file has changed since it was evaluated",
          "evaluate it again and then write the report"};
}

}  // namespace soakwright
