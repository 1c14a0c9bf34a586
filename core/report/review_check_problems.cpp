// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/review_check_problems.h"

#include <string>
#include <utility>

#include "core/report/open_findings.h"
#include "core/units/number_text.h"

namespace soakwright {
namespace {

Problem refusal(const Review& review, std::size_t line, std::string what, std::string help) {
  return {ProblemKind::bad_input, review.file, line, std::move(what), std::move(help)};
}

/// "stage-1.heating-rate, weld W-117, TC3, from 1200 s"
std::string place_of(const FindingReview& finding) {
  std::string text = finding.requirement.empty() ? "suspect thermocouple" : finding.requirement;
  if (finding.weld) text += ", weld " + *finding.weld;
  if (finding.channel) text += ", " + *finding.channel;
  if (finding.from_s) text += ", from " + number_text(*finding.from_s) + " s";
  return text;
}

}  // namespace

Problem review_names_no_result(const Review& review, const std::string& result_sha256) {
  return refusal(review, 0, "the review does not say which result it is of",
                 "review this result, then add `result_sha256 = \"" + result_sha256 + "\"`");
}

Problem review_of_another_result(const Review& review, const std::string& result_sha256) {
  return refusal(review, review.result_line,
                 "the review is of another result (SHA-256 " + review.result_sha256.value_or(std::string{}) +
                     "); the result of these files has " + result_sha256,
                 "give the log, job and procedure that were reviewed, or review this result");
}

Problem review_of_no_finding(const Review& review, const FindingReview& finding) {
  return refusal(review, finding.line, "the result has no such finding: " + place_of(finding),
                 "compare `requirement`, `weld`, `channel` and `from_s` with the result's findings");
}

Problem two_dispositions(const Review& review, const Finding& finding, const FindingReview& first,
                         const FindingReview& second) {
  return refusal(review, second.line,
                 "one finding has two dispositions: " + place_of(review_naming(finding)) + ", in line " +
                     std::to_string(first.line) + " and here",
                 "keep one of the two, or name `channel` and `from_s` in both");
}

}  // namespace soakwright
