// SPDX-License-Identifier: GPL-3.0-or-later
// What the report says of a review: who did what, what was decided, and what is still open.
#pragma once

#include <cstddef>
#include <string>

#include "core/procedure/review/review.h"

namespace soakwright {

/// "Performed by"
std::string person_role_text(Person::Role role);
/// "Accepted: 4 min, 3 °C below"
std::string disposition_text(const FindingReview& review);
/// What makes a report a draft; `open` is the number of findings without a disposition. Empty if there is
/// none.
std::string draft_text(std::size_t open);

}  // namespace soakwright
