// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/job/import_problems.h"

#include <fmt/format.h>

#include "core/procedure/toml/toml_problems.h"

namespace soakwright {

ProblemWords not_a_header_line(const FoundValue& found) {
  return {fmt::format("`{}` is {}", found.name, described(found.value)),
          "give the number of the line with the column names, or 0 where there is none"};
}

Problem unlisted_without_job() {
  return {ProblemKind::usage, "--unlisted", 0,
          "no job lists a thermocouple, so that all columns would be off",
          "name a job with [[thermocouple]] tables, or leave out the option"};
}

}  // namespace soakwright
