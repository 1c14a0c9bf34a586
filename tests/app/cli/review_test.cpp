// SPDX-License-Identifier: GPL-3.0-or-later
// A review is printed under a result's signatures: it must have been made on this result, and on its
// findings.
#include <string>

#include <catch2/catch.hpp>

#include "core/units/sha256.h"
#include "tests/app/cli/run_program.h"

using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

const std::string failing = source_file("sample-logs/w-118-late-and-dipping/job.toml");

std::string digest_of_result(const std::string& job) {
  return soakwright::sha256_hex(run_soakwright({"check", "--job", job, "--json", "-"}).out);
}

std::string review_of(const std::string& digest, const std::string& findings = {}) {
  return "soakwright = \"review 1\"\nresult_sha256 = \"" + digest +
         "\"\n[[person]]\nrole = \"reviewed\"\nname = \"T. Lindqvist\"\n" + findings;
}

std::string finding(const std::string& requirement, const std::string& more = {}) {
  return "[[finding]]\nrequirement = \"" + requirement +
         "\"\ndisposition = \"repeat\"\nreason = \"heater changed\"\n" + more;
}

}  // namespace

TEST_CASE(
    "a review with the digest of the written result is accepted, and changes neither digest nor verdict") {
  const TemporaryFolder folder;
  const std::string json = folder.file("result.json");
  const Ran plain = run_soakwright({"check", "--job", failing, "--json", json});
  REQUIRE(plain.exit_code == 1);
  const std::string digest = soakwright::sha256_hex(text_of(json));
  const std::string review = folder.with("review.toml", review_of(digest, finding("stage-1.heating-rate")));
  const Ran reviewed = run_soakwright({"check", "--job", failing, "--review", review, "--json", "-"});
  INFO(reviewed.err);
  CHECK(reviewed.exit_code == 1);
  CHECK(reviewed.out == text_of(json));
  CHECK_THAT(run_soakwright({"check", "--job", failing, "--review", review}).out,
             Contains("To be repeated: heater changed"));
}

TEST_CASE("a review of another result is refused and nothing is written") {
  const TemporaryFolder folder;
  const std::string review = folder.with("review.toml", review_of(std::string(64, '0')));
  const Ran ran =
      run_soakwright({"check", "--job", failing, "--review", review, "--json", folder.file("result.json")});
  CHECK(ran.exit_code == 65);
  CHECK(ran.out.empty());
  CHECK_THAT(ran.err,
             StartsWith("soakwright: " + review + ":2: the review is of another result (SHA-256 0000") &&
                 Contains(digest_of_result(failing)));
  CHECK(folder.names() == std::vector<std::string>{"review.toml"});
}

TEST_CASE("a review that names no result is refused, with the line that it lacks") {
  const TemporaryFolder folder;
  const std::string review = folder.with(
      "review.toml", "soakwright = \"review 1\"\n[[person]]\nrole = \"reviewed\"\nname = \"T. Lindqvist\"\n");
  const Ran ran = run_soakwright({"check", "--job", failing, "--review", review});
  CHECK(ran.exit_code == 65);
  CHECK_THAT(ran.err, Contains("does not say which result it is of") &&
                          Contains("result_sha256 = \"" + digest_of_result(failing) + "\""));
}

TEST_CASE("dispositions that match no finding are all listed") {
  const TemporaryFolder folder;
  const std::string review = folder.with(
      "review.toml", review_of(digest_of_result(failing),
                               finding("stage-1.heating-rate") + finding("stage-9.hold-time") +
                                   finding("stage-1.heating-rate", "channel = \"TC77\"\nfrom_s = 12.5\n")));
  const Ran ran = run_soakwright({"check", "--job", failing, "--review", review});
  CHECK(ran.exit_code == 65);
  CHECK_THAT(ran.err,
             Contains(review + ":10: the result has no such finding: stage-9.hold-time; ") &&
                 Contains(review + ":14: the result has no such finding: stage-1.heating-rate, TC77, from "
                                   "12.5 s; "));
}
