// SPDX-License-Identifier: GPL-3.0-or-later
// Which findings nobody has decided on yet. While there are any, a report is a draft and must not be signed.
#pragma once

#include <cstddef>
#include <vector>

#include "core/evaluate/analysis.h"
#include "core/procedure/review/review.h"

namespace soakwright {

/// True of what is not met or inconclusive, and of suspect thermocouples. Other notes may have a disposition
/// but need none.
bool needs_disposition(const Finding& finding);

/// True if the disposition belongs to the finding: the finding has all that it names, the requirement, and
/// where given weld, channel and start.
bool is_disposition_of(const FindingReview& review, const Finding& finding);

/// A review's entry that names this finding as closely as can be; disposition and reason are still to be set.
FindingReview review_naming(const Finding& finding);

/// Indices into Verdicts::findings, rising, of those that need a disposition and have none in
/// analysis.review. Empty without verdicts. That the review is of this result is for check_review() to say.
std::vector<std::size_t> open_findings(const Analysis& analysis);

}  // namespace soakwright
