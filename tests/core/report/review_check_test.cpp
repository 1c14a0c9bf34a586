// SPDX-License-Identifier: GPL-3.0-or-later
// A review belongs to one result: its digest says which.
#include "core/report/review_check.h"

#include <memory>
#include <string>

#include <catch2/catch.hpp>

#include "core/analyse.h"
#include "core/procedure/job/job_file.h"
#include "core/procedure/procedure_file.h"
#include "core/report/json/result_json.h"
#include "core/units/sha256.h"
#include "tests/core/read/written_log.h"

using namespace soakwright;
using Catch::Matchers::Contains;

namespace {

const std::string kFolder = std::string(SOAKWRIGHT_SOURCE_DIR) + "/sample-logs/w-118-late-and-dipping/";

Request request() {
  Request request;
  request.job = kFolder + "job.toml";
  return request;
}

Analysis with_review(Analysis analysis, Review review) {
  review.file = "review.toml";
  analysis.review = std::make_shared<const Review>(std::move(review));
  analysis.result_sha256 = result_digest(analysis);
  return analysis;
}

FindingReview disposition(const std::string& requirement) {
  FindingReview finding;
  finding.requirement = requirement;
  return finding;
}

}  // namespace

TEST_CASE("the digest is of the result's bytes, with and without a review") {
  const auto analysis = check(request());
  REQUIRE(analysis);
  const std::string digest = result_digest(analysis.value());
  CHECK(digest == sha256_hex(result_json(analysis.value())));
  CHECK(analysis.value().result_sha256.empty());
  Review review;
  review.result_sha256 = digest;
  const Analysis reviewed = with_review(analysis.value(), review);
  CHECK(result_digest(reviewed) == digest);
  CHECK(check_review(reviewed).empty());
}

TEST_CASE("dispositions match findings by what they name") {
  const auto analysis = check(request());
  REQUIRE(analysis);
  const auto& findings = analysis.value().verdicts->findings;
  Review review;
  review.result_sha256 = result_digest(analysis.value());
  for (const Finding& finding : findings) {
    if (finding.requirement.empty()) continue;
    FindingReview one = disposition(finding.requirement);
    one.weld = finding.weld;
    one.channel = finding.channel;
    one.from_s = finding.from_s;
    review.findings.push_back(one);
  }
  REQUIRE(review.findings.size() > 2);
  CHECK(check_review(with_review(analysis.value(), review)).empty());

  struct Row {
    const char* what;
    void (*change)(FindingReview&);
  };
  const Row rows[] = {
      {"another requirement", [](FindingReview& f) { f.requirement = "stage-7.spread"; }},
      {"another weld", [](FindingReview& f) { f.weld = "W-999"; }},
      {"another channel", [](FindingReview& f) { f.channel = "TC77"; }},
      {"another start", [](FindingReview& f) { f.from_s = 1.25; }},
  };
  for (const Row& row : rows) {
    INFO(row.what);
    Review changed = review;
    row.change(changed.findings[1]);
    const Problems problems = check_review(with_review(analysis.value(), changed));
    REQUIRE(problems.size() == 1);
    CHECK(problems.front().kind == ProblemKind::bad_input);
    CHECK_THAT(problems.front().text(), Contains("the result has no such finding: "));
  }
}

TEST_CASE("evaluation against another procedure refuses the review of the first one") {
  Request specified = request();
  const auto plain = check(specified);
  REQUIRE(plain);
  const WrittenLog review("soakwright = \"review 1\"\nresult_sha256 = \"" + result_digest(plain.value()) +
                          "\"\n");
  specified.review = review.path();
  const auto reviewed = check(specified);
  REQUIRE(reviewed);
  CHECK(reviewed.value().result_sha256 == result_digest(plain.value()));
  CHECK(evaluate_again(reviewed.value(), reviewed.value().procedure).ok());

  Procedure other = *reviewed.value().procedure;
  other.number = "HTP-999";
  const auto again = evaluate_again(reviewed.value(), std::make_shared<const Procedure>(other));
  REQUIRE_FALSE(again);
  CHECK_THAT(again.problems().front().text(), Contains("the review is of another result"));
  CHECK(evaluate_again(plain.value(), std::make_shared<const Procedure>(other)).ok());
}

TEST_CASE("a record without a verdict takes no review") {
  Request specified = request();
  specified.review = "review.toml";
  const auto inspected = inspect(specified);
  REQUIRE_FALSE(inspected);
  CHECK_THAT(inspected.problems().front().text(), Contains("no procedure is named"));
}
