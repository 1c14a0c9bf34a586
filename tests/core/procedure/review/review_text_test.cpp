// SPDX-License-Identifier: GPL-3.0-or-later
// A review that is written reads back as what was meant.
#include "core/procedure/review/review_text.h"

#include <string>

#include <catch2/catch.hpp>

#include "core/procedure/job/job_file.h"
#include "tests/core/procedure/refusals.h"

using namespace soakwright;

TEST_CASE("a review reads back as it was written") {
  Review review;
  review.result_sha256 = std::string(64, 'a');
  FindingReview first;
  first.requirement = "stage-1.heating-rate";
  first.weld = "W-\"117\"";
  first.channel = "TC2";
  first.from_s = 5400.25;
  first.disposition = FindingReview::Disposition::repeat;
  first.reason = "back\\slash, \"quotes\" and\ttabs";
  FindingReview second;
  second.requirement = "stage-2.spread";
  second.from_s = 12.0;
  second.reason = "4 °C only";
  review.findings = {first, second};
  Person person;
  person.role = Person::Role::witnessed;
  person.name = "Ines Okafor";
  person.company = "Saltmarsh Heat & Power";
  person.date = CivilDate{2031, 4, 9};
  person.remark = "seen on site";
  Person nobody;
  review.people = {person, nobody};

  const Review back = accepted(parse_review(review_text(review), "given.toml"));
  CHECK(back.result_sha256 == review.result_sha256);
  REQUIRE(back.findings.size() == 2);
  for (std::size_t i = 0; i < 2; ++i) {
    FindingReview same = back.findings[i];
    same.line = 0;
    CHECK(same == review.findings[i]);
  }
  CHECK(back.people == std::vector<Person>{person});
}

TEST_CASE("a review without a word in it is one all the same") {
  CHECK(review_text({}) == "soakwright = \"review 1\"\n");
  CHECK(parse_review(review_text({}), "given.toml").ok());
}
