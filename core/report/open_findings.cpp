// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/open_findings.h"

#include <algorithm>
#include <cmath>

namespace soakwright {
namespace {

constexpr double kSameMoment_s = 1e-3;

}  // namespace

bool needs_disposition(const Finding& finding) {
  return finding.kind != Finding::Kind::note || !finding.suspects.empty();
}

bool is_disposition_of(const FindingReview& review, const Finding& finding) {
  if (review.requirement != finding.requirement) return false;
  if (review.weld && review.weld != finding.weld) return false;
  if (review.channel && review.channel != finding.channel) return false;
  return !review.from_s || (finding.from_s && std::fabs(*review.from_s - *finding.from_s) <= kSameMoment_s);
}

FindingReview review_naming(const Finding& finding) {
  FindingReview review;
  review.requirement = finding.requirement;
  review.weld = finding.weld;
  review.channel = finding.channel;
  review.from_s = finding.from_s;
  return review;
}

std::vector<std::size_t> open_findings(const Analysis& analysis) {
  std::vector<std::size_t> open;
  if (!analysis.verdicts) return open;
  const std::vector<Finding>& findings = analysis.verdicts->findings;
  const auto decided = [&](const Finding& finding) {
    return analysis.review &&
           std::any_of(analysis.review->findings.begin(), analysis.review->findings.end(),
                       [&](const FindingReview& one) { return is_disposition_of(one, finding); });
  };
  for (std::size_t i = 0; i < findings.size(); ++i)
    if (needs_disposition(findings[i]) && !decided(findings[i])) open.push_back(i);
  return open;
}

}  // namespace soakwright
