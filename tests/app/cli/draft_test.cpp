// SPDX-License-Identifier: GPL-3.0-or-later
// `soakwright draft`: what is written where, and what is refused. Figures of the rules are tested in
// tests/core/procedure/rules/rule_draft_test.cpp.
#include <filesystem>
#include <regex>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/cli/run_program.h"

using Catch::Matchers::Contains;
using Words = std::vector<std::string>;
namespace fs = std::filesystem;

namespace {

const Words kEn = {"draft",  "en-13445-4", "--thickness", "38 mm",
                   "--hold", "590-620",    "--hold-time", "95 min"};

Words with(Words words, const Words& more) {
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

/// Without the line breaks of a page.
std::string unwrapped(const std::string& page) { return std::regex_replace(page, std::regex("\\s+"), " "); }

std::string made_up_rule(const std::string& name) {
  return "soakwright = \"rule 1\"\nname = \"" + name +
         "\"\ntitle = \"A made-up rule\"\nunit = \"C\"\nsource = \"S\"\nedition = \"E\"\nclause = \"C\"\n"
         "flag = \"memory\"\n[[stage]]\nkind = \"cool\"\nrate_max = 100\nflag = \"memory\"\n";
}

}  // namespace

TEST_CASE("the list shows every rule with source, edition, flag and materials") {
  const Ran ran = run_soakwright({"draft", "--list"});
  INFO(ran.err);
  CHECK(ran.exit_code == 0);
  for (const auto& entry : fs::directory_iterator(source_file("resources/rules")))
    CHECK_THAT(ran.out, Contains(entry.path().stem().string() + "\n"));
  for (const char* words :
       {"ASME BPVC VIII-1", "2018", "Seen in print", "From memory, check against your edition",
        "P-No. 15E Gr. 1", "from 3 mm", "--hold and --hold-time"})
    CHECK_THAT(ran.out, Contains(words));
}

TEST_CASE("a draft goes to standard output or to a file, and evaluates a log as it stands") {
  const TemporaryFolder folder;
  const Ran shown = run_soakwright(kEn);
  CHECK(shown.exit_code == 0);
  CHECK(run_soakwright(with(kEn, {"--out", "-"})).out == shown.out);
  const std::string file = folder.file("draft.toml");
  const Ran written = run_soakwright(with(kEn, {"--out", file}));
  CHECK(written.exit_code == 0);
  CHECK(written.out.empty());
  REQUIRE(text_of(file) == shown.out);
  // The heating limit at 38 mm is 5500/38; the spread is limited within 4.5 m, for which the job must say
  // where each thermocouple is.
  const std::string log = stress_relief_file("d3-n2.csv");
  CHECK_THAT(run_soakwright({"check", log, "--procedure", file}).err, Contains("position"));
  std::string procedure = shown.out;
  const std::string within = "spread_within = \"4.5 m\"\n";
  REQUIRE(procedure.find(within) != std::string::npos);
  procedure.erase(procedure.find(within), within.size());
  const std::string edited = folder.with("edited.toml", procedure);
  const Ran checked = run_soakwright({"check", log, "--procedure", edited, "--json", folder.file("r.json")});
  INFO(checked.err);
  CHECK_THAT(unwrapped(checked.out), Contains("EN 13445-4, edition not recorded") &&
                                         Contains("from memory, check against your edition"));
  const auto result = nlohmann::json::parse(text_of(folder.file("r.json")));
  CHECK(result["procedure"]["flag"] == "memory");
  CHECK(result["procedure"]["stages"][0]["limits_from"] ==
        "EN 13445-4, edition not recorded, clause heating and cooling rates, from memory, check against your "
        "edition");
  CHECK(result["procedure"]["stages"][1]["source"] == "given by the user, not by EN 13445-4");
}

TEST_CASE("the option for the unit writes the same limits in the other unit") {
  const Ran ran = run_soakwright({"draft", "asme-b31-1-132-5", "--thickness", "1 in", "--hold", "593-650",
                                  "--hold-time", "1 h", "--unit", "C"});
  // NIST SP 811 B.8: 600 F/h is 333.3 C/h; 600 F is 315.6 C.
  CHECK_THAT(ran.out, Contains("unit = \"C\"") && Contains("above = 315.5555555555") &&
                          Contains("at_most = 333.333333333") && Contains("low = 593\n"));
}

TEST_CASE("what cannot be drafted is said, and nothing is written") {
  struct Row {
    Words arguments;
    int exit_code;
    const char* says;
  };
  const std::string p1 = "P-No. 1 Gr. 1";
  const std::vector<Row> rows = {
      {{"draft"}, 64, "no rule is named"},
      {{"draft", "--list", "--thickness", "3 mm"}, 64, "--thickness does nothing with --list"},
      {{"draft", "en-13445-4", "--job", "j"}, 64, "--job does nothing with a rule"},
      {{"draft", "--from", "a.csv", "--material", "x"}, 64, "--material does nothing with --from"},
      {{"draft", "en-13445-4", "--list"}, 64, "exclude each other"},
      {{"draft", "en-13445"}, 64, "did you mean `en-13445-4`?"},
      {{"draft", "en-13445-4", "--thickness", "38"}, 64, "--thickness '38' is no thickness"},
      {{"draft", "en-13445-4", "--thickness", "-3 mm"}, 64, "is no thickness"},
      {{"draft", "en-13445-4", "--thickness", "38 mm"}, 64, "gives no holding temperature and time"},
      {{"draft", "en-13445-4", "--hold", "590"}, 64, "belong together"},
      {{"draft", "en-13445-4", "--thickness", "38 mm", "--hold", "620-590", "--hold-time", "1 h"},
       64,
       "its lower limit above its upper limit"},
      {{"draft", "en-13445-4", "--thickness", "38 mm", "--hold", "warm", "--hold-time", "1 h"},
       64,
       "is no temperature range"},
      {{"draft", "en-13445-4", "--thickness", "38 mm", "--hold", "590", "--hold-time", "0 h"},
       64,
       "is no duration above 0"},
      {{"draft", "asme-viii-1-ucs-56", "--thickness", "38 mm"},
       64,
       "add --material with one of: P-No. 1 Gr. 1"},
      {{"draft", "asme-viii-1-ucs-56", "--thickness", "38 mm", "--material", "P-No. 8"},
       65,
       "does not cover the material"},
      {{"draft", "aws-d1-1-preheat-category-b", "--thickness", "2 mm"},
       65,
       "does not cover a thickness of 2 mm"},
      {{"draft", "asme-viii-1-ucs-56-si", "--thickness", "38 mm", "--material", p1, "--lower-by", "40"},
       65,
       "has no hold that is 40 °C lower"},
      {{"draft", "--list", "--rules", "/no/such/folder"}, 66, "the folder of rules cannot be read"},
      {{"draft", "--from", "/no/such.csv"}, 66, "/no/such.csv"},
      {{"draft", "en-13445-4", "--unit", "K"}, 64, "--unit is C or F"},
  };
  const TemporaryFolder folder;
  for (const Row& row : rows) {
    INFO(Catch::rangeToString(row.arguments));
    const bool may_have_out = row.arguments != Words{"draft"} && row.arguments[1] != "--list";
    const Ran ran = run_soakwright(may_have_out ? with(row.arguments, {"--out", folder.file("out.toml")})
                                                : row.arguments);
    INFO(ran.err);
    CHECK(ran.exit_code == row.exit_code);
    CHECK_THAT(ran.err, Contains(row.says));
  }
  CHECK(folder.names().empty());
}

TEST_CASE("rules of the user's data folder and of --rules count too, and are checked like the shipped ones") {
  const TemporaryFolder folder;
  fs::create_directories(folder.file("data/soakwright/rules"));
  fs::create_directories(folder.file("more"));
  const std::string mine = folder.with("data/soakwright/rules/mine.toml", made_up_rule("mine"));
  const Variables data = {{"XDG_DATA_HOME", folder.file("data")}};
  CHECK_THAT(run_soakwright({"draft", "mine"}, data).out, Contains("rate_max = 100"));
  // One name in two places.
  const std::string twin = folder.with("more/twin.toml", made_up_rule("mine"));
  const Ran twins = run_soakwright({"draft", "mine", "--rules", folder.file("more")}, data);
  CHECK(twins.exit_code == 65);
  CHECK_THAT(twins.err, Contains(twin) && Contains("the rule \"mine\" is in " + mine + " too"));
  // A rule that is not sound is named with its line; the others are listed all the same.
  REQUIRE(folder.with("more/twin.toml", made_up_rule("other") + "rate_mx = 1\n") == twin);
  const Ran unsound = run_soakwright({"draft", "--list", "--rules", folder.file("more")}, data);
  CHECK(unsound.exit_code == 65);
  CHECK_THAT(unsound.err, Contains("twin.toml:13: `rate_mx` is not a key of"));
  CHECK_THAT(unsound.out, Contains("mine\n"));
  // A rule is not written over.
  const Ran over = run_soakwright({"draft", "mine", "--out", mine}, data);
  CHECK(over.exit_code == 64);
  CHECK(text_of(mine) == made_up_rule("mine"));
}

TEST_CASE("a procedure proposed from a log is met by that log, and says that it is no requirement") {
  const TemporaryFolder folder;
  for (const char* sample : {"w-117-stress-relief/d3-n2.csv", "w-126-two-cycles"}) {
    std::string log = source_file(std::string("sample-logs/") + sample);
    if (fs::is_directory(log))
      for (const auto& entry : fs::directory_iterator(log))
        if (entry.path().extension() == ".csv") log = entry.path().string();
    INFO(log);
    const std::string file = folder.file("proposal.toml");
    const Ran made = run_soakwright({"draft", "--from", log, "--out", file});
    INFO(made.err);
    REQUIRE(made.exit_code == 0);
    INFO(text_of(file));
    const Ran checked = run_soakwright({"check", log, "--procedure", file});
    INFO(checked.out);
    CHECK(checked.exit_code == 0);
    CHECK_THAT(unwrapped(checked.out), Contains("proposed from a recorded cycle, not a requirement"));
    CHECK_THAT(unwrapped(checked.out), Contains("They are not a requirement"));
    CHECK_THAT(text_of(file), Contains("flag = \"proposal\"") && Contains("# A proposal from what the log"));
  }
}
