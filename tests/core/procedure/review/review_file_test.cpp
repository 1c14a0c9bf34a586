// SPDX-License-Identifier: GPL-3.0-or-later
// Review files: dispositions and people.
#include <string>
#include <utility>

#include <catch2/catch.hpp>

#include "core/procedure/job/job_file.h"
#include "core/procedure/review/review.h"
#include "core/units/sha256.h"
#include "tests/core/procedure/refusals.h"

using namespace soakwright;

namespace {

const std::string kHead = "soakwright = \"review 1\"\n";
Result<Review> parsed(const std::string& text) { return parse_review(text, "given.toml"); }

}  // namespace

TEST_CASE("a review is read with its dispositions and its people") {
  const std::string text =
      kHead + "result_sha256 = \"" + sha256_hex("abc") +
      "\"\n"
      "[[finding]]\nrequirement = \"stage-2.excursion-time\"\nweld = \"W-117\"\nchannel = \"TC3\"\n"
      "from_s = 25800\ndisposition = \"accepted\"\nreason = \"4 min, 3 C below\"\n"
      "[[finding]]\nrequirement = \"record.gap\"\ndisposition = \"repeat\"\nreason = \"hole\"\n"
      "[[finding]]\nrequirement = \"record.end\"\ndisposition = \"rejected\"\nreason = \"hot\"\n"
      "[[person]]\nrole = \"performed\"\nname = \"Ines Okafor\"\n"
      "company = \"Brackwater Fabrication\"\ndate = 2031-04-03\n"
      "[[person]]\nrole = \"reviewed\"\nname = \"Tomasz Lindqvist\"\nremark = \"see finding 1\"\n"
      "[[person]]\nrole = \"witnessed\"\nname = \"Mara Devlin\"\n";
  const Review review = accepted(parsed(text));
  using Disposition = FindingReview::Disposition;
  CHECK(review.file == "given.toml");
  CHECK(review.sha256 == sha256_hex(text));
  CHECK(review.result_sha256 == sha256_hex("abc"));
  REQUIRE(review.findings.size() == 3);
  CHECK(review.findings[0] == FindingReview{"stage-2.excursion-time", "W-117", "TC3", 25800.0,
                                            Disposition::accepted, "4 min, 3 C below", 3});
  CHECK(review.result_line == 2);
  CHECK(review.findings[1].disposition == Disposition::repeat);
  CHECK(review.findings[2].disposition == Disposition::rejected);
  REQUIRE(review.people.size() == 3);
  CHECK(review.people[0] == Person{Person::Role::performed, "Ines Okafor", CivilDate{2031, 4, 3},
                                   std::nullopt, "Brackwater Fabrication"});
  CHECK_FALSE(review.people[1].company);
  CHECK(review.people[1].remark == "see finding 1");
  CHECK(review.people[2].role == Person::Role::witnessed);
}

TEST_CASE("reviews that are refused") {
  const std::string finding = "[[finding]]\nrequirement = \"record.gap\"\n";
  for (const Refused& row : {
           Refused{"soakwright = \"job 1\"\n", 1, "\"job 1\"", "a review is needed here"},
           Refused{kHead + "result_sha256 = \"abc\"\n", 2, "`result_sha256` is \"abc\"",
                   "64 hexadecimal digits"},
           Refused{kHead + "result = \"abc\"\n", 2, "`result` is not a key of the review", "result_sha256"},
           Refused{kHead + "[[finding]]\nweld = \"W-117\"\ndisposition = \"accepted\"\nreason = \"x\"\n", 2,
                   "names neither `requirement` nor `channel`", "suspect thermocouple"},
           Refused{kHead + finding + "disposition = \"accepted\"\n", 2, "`reason` is missing", "add"},
           Refused{kHead + finding + "reason = \"x\"\n", 2, "`disposition` is missing", "add"},
           Refused{kHead + finding + "disposition = \"ok\"\nreason = \"x\"\n", 4, "`disposition` is \"ok\"",
                   "accepted, repeat, rejected"},
           Refused{kHead + finding + "disposition = \"accepted\"\nreason = \" \"\n", 5, "`reason` is empty",
                   ""},
           Refused{kHead + finding + "from_s = \"13:10\"\ndisposition = \"accepted\"\nreason = \"x\"\n", 4,
                   "`from_s`", "plain number"},
           Refused{kHead + finding + "disposition = \"accepted\"\nreason = \"x\"\n" + finding +
                       "disposition = \"rejected\"\nreason = \"y\"\n",
                   6, "has a disposition already", "keep one"},
           Refused{kHead + "[[person]]\nrole = \"welder\"\nname = \"Ines Okafor\"\n", 3,
                   "`role` is \"welder\"", "performed, reviewed, witnessed"},
           Refused{kHead + "[[person]]\nrole = \"reviewed\"\n", 2, "`name` is missing", "add"},
           Refused{
               kHead + "[[person]]\nrole = \"reviewed\"\nname = \"Tomasz Lindqvist\"\ndate = \"3 April\"\n",
               5, "`date` is \"3 April\"", "2031-09-30"},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("a disposition of a suspect thermocouple names its channel, or the start, and no requirement") {
  const Review review =
      accepted(parsed(kHead + "[[finding]]\nchannel = \"TC3\"\ndisposition = \"accepted\"\nreason = \"a\"\n" +
                      "[[finding]]\nfrom_s = 60\ndisposition = \"repeat\"\nreason = \"b\"\n"));
  REQUIRE(review.findings.size() == 2);
  CHECK(review.findings[0].requirement.empty());
  CHECK(review.findings[0].channel == "TC3");
  CHECK(review.findings[1].from_s == 60.0);
}
