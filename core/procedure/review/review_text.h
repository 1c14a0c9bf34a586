// SPDX-License-Identifier: GPL-3.0-or-later
// A review as the text of its file: what parse_review() (job_file.h) reads back to the same review.
#pragma once

#include <string>

#include "core/procedure/review/review.h"

namespace soakwright {

/// Persons without a name are left out: the file has no place for them.
std::string review_text(const Review& review);

}  // namespace soakwright
