// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/review_check.h"

#include <algorithm>
#include <cmath>

#include "core/report/result_json.h"
#include "core/units/number_text.h"
#include "core/units/sha256.h"

namespace soakwright {
namespace {

constexpr double kSameMoment_s = 1e-3;

Problem refusal(const Review& review, std::size_t line, std::string what, std::string help) {
  return {ProblemKind::bad_input, review.file, line, std::move(what), std::move(help)};
}

/// "stage-1.heating-rate, weld W-117, TC3, from 1200 s"
std::string place_of(const FindingReview& finding) {
  std::string text = finding.requirement;
  if (finding.weld) text += ", weld " + *finding.weld;
  if (finding.channel) text += ", " + *finding.channel;
  if (finding.from_s) text += ", from " + number_text(*finding.from_s) + " s";
  return text;
}

}  // namespace

bool is_disposition_of(const FindingReview& review, const Finding& finding) {
  if (review.requirement != finding.requirement) return false;
  if (review.weld && review.weld != finding.weld) return false;
  if (review.channel && review.channel != finding.channel) return false;
  return !review.from_s || (finding.from_s && std::fabs(*review.from_s - *finding.from_s) <= kSameMoment_s);
}

std::string result_digest(const Analysis& analysis) { return sha256_hex(result_json(analysis)); }

Problems check_review(const Analysis& analysis) {
  const Review& review = *analysis.review;
  if (!review.result_sha256)
    return {refusal(review, 0, "the review does not say which result it is of",
                    "review this result, then add `result_sha256 = \"" + analysis.result_sha256 + "\"`")};
  if (*review.result_sha256 != analysis.result_sha256)
    return {refusal(review, review.result_line,
                    "the review is of another result (SHA-256 " + *review.result_sha256 +
                        "); the result of these files has " + analysis.result_sha256,
                    "give the log, job and procedure that were reviewed, or review this result")};
  Problems problems;
  for (const FindingReview& finding : review.findings) {
    const bool found = analysis.verdicts &&
                       std::any_of(analysis.verdicts->findings.begin(), analysis.verdicts->findings.end(),
                                   [&](const Finding& one) { return is_disposition_of(finding, one); });
    if (!found)
      problems.push_back(
          refusal(review, finding.line, "the result has no such finding: " + place_of(finding),
                  "compare `requirement`, `weld`, `channel` and `from_s` with the result's findings"));
  }
  return problems;
}

}  // namespace soakwright
