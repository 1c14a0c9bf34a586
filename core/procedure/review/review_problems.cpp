// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/review/review_problems.h"

namespace soakwright {

std::nullopt_t refuse_as_digest(const FoundValue& found) {
  return found.refuse_kind("write the 64 hexadecimal digits of the result's SHA-256, in lower case");
}

void complain_that_it_names_no_finding(TableReader& finding) {
  finding.complain(finding.line(), "this finding names neither `requirement` nor `channel` nor `from_s`",
                   "name the requirement, or of a suspect thermocouple `channel` or `from_s`");
}

void complain_of_second_disposition(TableReader& finding) {
  finding.complain(finding.line(), "this finding has a disposition already", "keep one of the two");
}

}  // namespace soakwright
