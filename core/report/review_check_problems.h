// SPDX-License-Identifier: GPL-3.0-or-later
// The words in which a review is refused.
#pragma once

#include "core/evaluate/analysis.h"
#include "core/problems/problem.h"
#include "core/procedure/review/review.h"

namespace soakwright {

Problem review_names_no_result(const Review& review, const std::string& result_sha256);
Problem review_of_another_result(const Review& review, const std::string& result_sha256);
/// `finding` is an entry of the review that belongs to no finding of the result.
Problem review_of_no_finding(const Review& review, const FindingReview& finding);
/// Two entries decide differently on one finding.
Problem two_dispositions(const Review& review, const Finding& finding, const FindingReview& first,
                         const FindingReview& second);

}  // namespace soakwright
