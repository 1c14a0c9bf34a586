// SPDX-License-Identifier: GPL-3.0-or-later
// What a finding means: every kind of limit has its reasons, and each says where it comes from.
#include "core/wording/explanation.h"

#include <catch2/catch.hpp>

#include "core/wording/requirement_words.h"
#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;
using Catch::Matchers::Contains;

namespace {

Finding finding_of(const Requirement& requirement, Finding::Kind kind) {
  Finding finding;
  finding.requirement = requirement.id;
  finding.kind = kind;
  return finding;
}

}  // namespace

TEST_CASE("Every kind of limit has reasons of its own, each part said and marked") {
  const Record record = plain_record().record();
  const PrintedNumbers say{TemperatureUnit::celsius, record};
  const Procedure procedure = procedure_of(hold_500_600_with("time_min = \"1 h\""));
  std::vector<std::string> seen;
  for (std::size_t kind = 0; kind < kRequirementKinds; ++kind) {
    CAPTURE(kind);
    Requirement requirement;
    requirement.kind = static_cast<RequirementKind>(kind);
    CHECK_FALSE(words_of(requirement.kind).label.empty());
    for (const Finding::Kind verdict : {Finding::Kind::not_met, Finding::Kind::inconclusive}) {
      const auto explanation =
          explain(finding_of(requirement, verdict), &requirement, procedure, say, "what the record shows");
      REQUIRE(explanation);
      for (const std::string& part : {explanation->required, explanation->why, explanation->look_first})
        CHECK(part.size() > 20);
      CHECK(explanation->shown == "what the record shows");
      CHECK(explanation->causes.size() >= 2);
      for (const std::string& cause : explanation->causes) CHECK(cause.size() > 10);
      CHECK(explanation->mark == "common practice, no source");
      CHECK_FALSE(explanation->why_source.empty());
      CHECK(explanation->would_help.empty() == (verdict == Finding::Kind::not_met));
      if (verdict == Finding::Kind::not_met) seen.push_back(explanation->why + explanation->look_first);
    }
  }
  std::sort(seen.begin(), seen.end());
  CHECK(std::adjacent_find(seen.begin(), seen.end()) == seen.end());
}

TEST_CASE("What is required is said with its limit, its unit and the procedure's own source") {
  const Record record = plain_record().record();
  const PrintedNumbers say{TemperatureUnit::celsius, record};
  const Procedure procedure =
      procedure_of("[[stage]]\nkind = \"heat\"\nrate_max = 100\nsource = \"works procedure 7\"\n" +
                   hold_500_600_with("time_min = \"95 min\""));
  Requirement rate;
  rate.kind = RequirementKind::heating_rate;
  rate.stage = 1;
  rate.limit = 144.7;
  CHECK_THAT(explain(finding_of(rate, Finding::Kind::not_met), &rate, procedure, say, "what the record shows")
                 ->required,
             Contains("at most 144.7 °C/h (HTP-900: works procedure 7)."));
  Requirement time;
  time.kind = RequirementKind::hold_time;
  time.stage = 2;
  time.limit = 5700;
  CHECK_THAT(
      explain(finding_of(time, Finding::Kind::inconclusive), &time, procedure, say, "what the record shows")
          ->required,
      Contains("at least 1 h 35 min (HTP-900)."));
}

TEST_CASE("Where a standard stands for a limit it is named") {
  // AWS D10.10 (2021), and J. H. Hollomon, L. D. Jaffe 1945: as the facts of this project's references have
  // them.
  CHECK_THAT(std::string{words_of(RequirementKind::edge).why_source}, Contains("AWS D10.10 (2021)"));
  CHECK_THAT(std::string{words_of(RequirementKind::tempering_min).why_source}, Contains("Hollomon"));
}

TEST_CASE("A note, and a finding that belongs to no limit, need no explanation") {
  const Record record = plain_record().record();
  const PrintedNumbers say{TemperatureUnit::celsius, record};
  const Procedure procedure = procedure_of(hold_500_600_with("time_min = \"1 h\""));
  const Requirement requirement;
  CHECK_FALSE(explain(finding_of(requirement, Finding::Kind::note), &requirement, procedure, say,
                      "what the record shows"));
  CHECK_FALSE(explain(finding_of(requirement, Finding::Kind::not_met), nullptr, procedure, say,
                      "what the record shows"));
}
