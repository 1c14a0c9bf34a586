// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/review/review_problems.h"

#include <fmt/format.h>

#include "core/procedure/toml/toml_problems.h"

namespace soakwright::review_problems {

ProblemWords not_a_digest(const FoundValue& found) {
  return {fmt::format("`{}` is {}", found.name, described(found.value)),
          "write the 64 hexadecimal digits of the result's SHA-256, in lower case"};
}

ProblemWords names_no_finding() {
  return {"this finding names neither `requirement` nor `channel` nor `from_s`",
          "name the requirement, or of a suspect thermocouple `channel` or `from_s`"};
}

ProblemWords second_disposition() {
  return {"this finding has a disposition already", "keep one of the two"};
}

}  // namespace soakwright::review_problems
