// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/review_check.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "core/report/json/result_json.h"
#include "core/report/open_findings.h"
#include "core/report/review_check_problems.h"
#include "core/units/sha256.h"

namespace soakwright {
namespace {

/// A finding accepted in one entry and rejected in another has no disposition that could be printed.
std::optional<Problem> clash_of_dispositions(const Review& review, const Finding& finding) {
  const FindingReview* first = nullptr;
  for (const FindingReview& one : review.findings) {
    if (!is_disposition_of(one, finding)) continue;
    if (first != nullptr && first->disposition != one.disposition)
      return two_dispositions(review, finding, *first, one);
    if (first == nullptr) first = &one;
  }
  return std::nullopt;
}

}  // namespace

std::string result_digest(const Analysis& analysis) { return sha256_hex(result_json(analysis)); }

Problems check_review(const Analysis& analysis) {
  const Review& review = *analysis.review;
  if (!review.result_sha256) return {review_names_no_result(review, analysis.result_sha256)};
  if (*review.result_sha256 != analysis.result_sha256)
    return {review_of_another_result(review, analysis.result_sha256)};
  Problems problems;
  if (analysis.verdicts)
    for (const Finding& finding : analysis.verdicts->findings)
      if (auto clash = clash_of_dispositions(review, finding)) problems.push_back(std::move(*clash));
  for (const FindingReview& finding : review.findings) {
    const bool found = analysis.verdicts &&
                       std::any_of(analysis.verdicts->findings.begin(), analysis.verdicts->findings.end(),
                                   [&](const Finding& one) { return is_disposition_of(finding, one); });
    if (!found) problems.push_back(review_of_no_finding(review, finding));
  }
  return problems;
}

}  // namespace soakwright
