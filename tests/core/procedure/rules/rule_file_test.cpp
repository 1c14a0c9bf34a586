// SPDX-License-Identifier: GPL-3.0-or-later
// Files of published rules: the shipped ones, and what is refused in which words.
#include "core/procedure/rules/rule_file.h"

#include <algorithm>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/procedure/shipped_rules.h"

using namespace soakwright;

namespace {

const std::string kHead =
    "soakwright = \"rule 1\"\nname = \"made-up\"\ntitle = \"A made-up rule\"\nunit = \"C\"\n"
    "source = \"Nobody's code\"\nedition = \"2031\"\nclause = \"1\"\nflag = \"memory\"\n";
const std::string kCool = "[[stage]]\nkind = \"cool\"\nrate_max = 100\nflag = \"seen\"\n";

}  // namespace

TEST_CASE("every shipped rule is sound, and says of each stage where it comes from") {
  INFO(all_texts(shipped_rules().problems));
  CHECK(shipped_rules().problems.empty());
  CHECK(shipped_rules().rules.size() >= 10);
  for (const PublishedRule& rule : shipped_rules().rules) {
    INFO(rule.name);
    CHECK(rule.file.ends_with("/" + rule.name + ".toml"));
    for (const RuleStage& one : rule.stages) {
      CHECK(one.stage.provenance.source);
      CHECK(one.stage.provenance.edition);
      CHECK(one.stage.provenance.clause);
      CHECK(one.stage.provenance.flag);
    }
  }
}

TEST_CASE("a stage takes source, edition and clause from its rule, and the flag is its own") {
  const PublishedRule rule = accepted(parse_rule(kHead + kCool, "given.toml"));
  REQUIRE(rule.stages.size() == 1);
  CHECK(rule.stages[0].stage.provenance == Provenance{"Nobody's code", "2031", "1", Provenance::Flag::seen});
}

TEST_CASE("a rule that is not sound is refused with its line") {
  const std::vector<Refused> rows = {
      {"soakwright = \"procedure 1\"\n", 1, "", "rule 1"},
      {kHead, 1, "the rule has no stage", "[[stage]]"},
      {kHead + "[[stage]]\nkind = \"cool\"\nrate_max = 100\n", 9, "flag", "flag"},
      {"soakwright = \"rule 1\"\nname = \"Made Up\"\n" + kHead.substr(kHead.find("title")) + kCool, 2,
       "a letter that a rule's name cannot have", "small letters"},
      {kHead + kCool + "material = [\"P-No. 1\"]\n", 13, "is not one of the rule's materials", "materials"},
      {kHead + "materials = [\"A\", \"B\"]\n" + kCool + "material = [\"A\"]\n", 9,
       "no stage of its own is given for the material \"B\"", "materials"},
      {kHead + kCool + "thickness_from = \"30 mm\"\nthickness_to = \"20 mm\"\n", 14,
       "the thickness range has nothing in it", "thickness_to"},
      {kHead + kCool + "thickness_from = \"3 mm\"\nthickness_above = \"3 mm\"\n", 14,
       "`thickness_from` and `thickness_above` are both given", "keep one"},
      {kHead + kCool + "lower_by = 30\n", 13, "`lower_by` is given for a stage that is no hold", "hold"},
      {kHead + kCool + "rate_mx = 30\n", 13, "`rate_mx` is not a key of", "rate_max"},
      {kHead + "[[stage]]\nkind = \"given-hold\"\nlow = 600\nflag = \"seen\"\n", 11, "`low` is not a key of",
       ""},
  };
  for (const Refused& row : rows) CHECK(unlike(parse_rule(row.text, "given.toml"), row) == "");
}

TEST_CASE("thickness ranges include their bounds as they say") {
  const ThicknessRange from_to{mm(3), std::nullopt, mm(20)};
  CHECK(from_to.contains(mm(3)));
  CHECK(from_to.contains(mm(20)));
  CHECK_FALSE(from_to.contains(mm(2.999)));
  CHECK_FALSE(from_to.contains(mm(20.001)));
  const ThicknessRange above{std::nullopt, mm(20), std::nullopt};
  CHECK_FALSE(above.contains(mm(20)));
  CHECK(above.contains(mm(20.001)));
}
