// SPDX-License-Identifier: GPL-3.0-or-later
// Nothing is signed while a finding waits for a person's decision.
#include "core/report/open_findings.h"

#include <memory>
#include <string>

#include <catch2/catch.hpp>

#include "core/analyse.h"
#include "core/report/report.h"
#include "core/report/review_check.h"

using namespace soakwright;
using Catch::Matchers::Contains;

namespace {

Analysis failed_run() {
  Request request;
  request.job = std::string(SOAKWRIGHT_SOURCE_DIR) + "/sample-logs/w-118-late-and-dipping/job.toml";
  auto analysis = check(request);
  REQUIRE(analysis);
  return std::move(analysis).value();
}

Finding suspect_note() {
  Finding note;
  note.kind = Finding::Kind::note;
  note.channel = "TC4";
  note.from_s = 600.0;
  note.to_s = 900.0;
  note.suspects = {0};
  return note;
}

Analysis with_findings(Analysis analysis, std::vector<Finding> findings) {
  auto verdicts = std::make_shared<Verdicts>(*analysis.verdicts);
  verdicts->findings = std::move(findings);
  analysis.verdicts = verdicts;
  return analysis;
}

Analysis reviewed(Analysis analysis, std::vector<FindingReview> findings) {
  Review review;
  review.file = "review.toml";
  review.findings = std::move(findings);
  analysis.result_sha256 = result_digest(analysis);
  review.result_sha256 = analysis.result_sha256;
  analysis.review = std::make_shared<const Review>(std::move(review));
  return analysis;
}

}  // namespace

// Common practice, no source: whoever signs has decided on each nonconformity before.
TEST_CASE("what is not met, inconclusive or suspect needs a disposition, another note needs none") {
  Finding finding;
  finding.requirement = "stage-2.hold-time";
  finding.kind = Finding::Kind::not_met;
  CHECK(needs_disposition(finding));
  finding.kind = Finding::Kind::inconclusive;
  CHECK(needs_disposition(finding));
  finding.kind = Finding::Kind::note;
  CHECK_FALSE(needs_disposition(finding));
  CHECK(needs_disposition(suspect_note()));
}

TEST_CASE("a finding is open until the review has a disposition of it") {
  const Analysis run = failed_run();
  const std::vector<std::size_t> all = open_findings(run);
  REQUIRE(all.size() >= 3);
  std::vector<FindingReview> decided;
  for (std::size_t i = 0; i < run.verdicts->findings.size(); ++i)
    if (needs_disposition(run.verdicts->findings[i]))
      decided.push_back(review_naming(run.verdicts->findings[i]));
  CHECK(open_findings(reviewed(run, decided)).empty());
  CHECK(check_review(reviewed(run, decided)).empty());
  decided.pop_back();
  const Analysis partly = reviewed(run, decided);
  REQUIRE(open_findings(partly).size() == 1);
  CHECK(open_findings(partly).front() == all.back());
}

TEST_CASE("a suspect thermocouple is decided on by its channel") {
  const Analysis run = with_findings(failed_run(), {suspect_note()});
  CHECK(open_findings(run) == std::vector<std::size_t>{0});
  FindingReview other;
  other.channel = "TC5";
  CHECK(open_findings(reviewed(run, {other})) == std::vector<std::size_t>{0});
  FindingReview of_it;
  of_it.channel = "TC4";
  CHECK(open_findings(reviewed(run, {of_it})).empty());
  CHECK(check_review(reviewed(run, {of_it})).empty());
}

TEST_CASE("two different dispositions of one finding are refused, two alike are not") {
  const Analysis run = failed_run();
  const std::string& requirement = run.verdicts->findings.front().requirement;
  FindingReview general;
  general.requirement = requirement;
  general.line = 3;
  FindingReview exact = review_naming(run.verdicts->findings.front());
  exact.line = 8;
  CHECK(check_review(reviewed(run, {general, exact})).empty());
  exact.disposition = FindingReview::Disposition::rejected;
  const Problems problems = check_review(reviewed(run, {general, exact}));
  REQUIRE_FALSE(problems.empty());
  CHECK(problems.front().line == 8);
  CHECK_THAT(problems.front().text(), Contains("one finding has two dispositions") && Contains("line 3"));
}

TEST_CASE("a report with open findings says that it is a draft, and how many there are") {
  const Analysis run = failed_run();
  const Report open = make_report(run);
  CHECK(open.draft ==
        "Draft: " + std::to_string(open_findings(run).size()) + " findings have no disposition yet.");
  std::vector<FindingReview> decided;
  for (const Finding& finding : run.verdicts->findings) decided.push_back(review_naming(finding));
  for (FindingReview& one : decided) one.reason = "seen";
  const Report closed = make_report(reviewed(run, decided));
  CHECK(closed.draft.empty());
  for (const FindingRow& row : closed.findings) {
    CHECK_FALSE(row.open);
    CHECK(row.disposition == "Accepted: seen");
  }
  CHECK(open.findings.front().open);
}
