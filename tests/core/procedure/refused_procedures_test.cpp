// SPDX-License-Identifier: GPL-3.0-or-later
// Procedures that are refused as a whole, for their head, or for [evaluation] and [record], and in which
// words.
#include <string>

#include <catch2/catch.hpp>

#include "tests/core/procedure/parsed_procedure.h"

using namespace soakwright;
using namespace soakwright::given_procedure;

TEST_CASE("procedures that are refused as a whole") {
  const std::string body = kHead + kHold;
  const std::string no_version = body.substr(body.find('\n') + 1);
  for (const Refused& row : {
           Refused{no_version, 1, "`soakwright` is missing in the procedure", "add `soakwright"},
           Refused{"soakwright = \"job 1\"\nwork = \"drum\"\n", 1,
                   "\"job 1\": this file is a job, not a procedure", "a procedure is needed here"},
           Refused{"soakwright = \"procedure 2\"\n", 1, "\"procedure 2\"",
                   "this program reads \"procedure 1\""},
           Refused{"soakwright = 1\n", 1, "`soakwright` is 1", "\"procedure 1\""},
           Refused{"\n\nsoakwright = procedure 1\n", 3, "not TOML", "double quotes"},
           Refused{kHead + "number = \"2\"\n" + kHold, 4, "not TOML", ""},
           Refused{kHead + "title = \"\xB0\"\n" + kHold, 4, "not TOML", "UTF-8"},
           Refused{"Time,TC1\n06:00,20\n", 1, "not TOML", ""},
           Refused{std::string("\0\x01\x02", 3), 1, "not TOML", ""},
       }) {
    CHECK(unlike(parsed(row.text), row) == "");
  }
}

TEST_CASE("an empty file lacks everything that is required, said in one answer") {
  const auto empty = parsed("");
  REQUIRE_FALSE(empty.ok());
  const Problems& problems = empty.problems();
  REQUIRE(problems.size() == 4);
  CHECK(problems[0].what == "`soakwright` is missing in the procedure");
  CHECK(problems[1].what == "`number` is missing in the procedure");
  CHECK(problems[2].what == "`unit` is missing in the procedure");
  CHECK(problems[3].what == "the procedure has no stage");
}

TEST_CASE("keys of the head that are refused") {
  for (const Refused& row : {
           Refused{"soakwright = \"procedure 1\"\nunit = \"C\"\n" + kHold, 1, "`number` is missing",
                   "`number ="},
           Refused{"soakwright = \"procedure 1\"\nnumber = \"1\"\n" + kHold, 1, "`unit` is missing",
                   "`unit ="},
           Refused{"soakwright = \"procedure 1\"\nnumber = \" \"\nunit = \"C\"\n" + kHold, 2,
                   "`number` is empty", "name"},
           Refused{"soakwright = \"procedure 1\"\nnumber = 21\nunit = \"C\"\n" + kHold, 2, "`number` is 21",
                   "double quotes"},
           Refused{"soakwright = \"procedure 1\"\nnumber = \"1\"\nunit = \"R\"\n" + kHold, 3,
                   "`unit` is \"R\"", "C, F"},
           Refused{"soakwright = \"procedure 1\"\nnumber = \"1\"\nunit = \"K\"\n" + kHold, 3,
                   "`unit` is \"K\"", "C, F"},
           Refused{"soakwright = \"procedure 1\"\nnumber = \"1\"\nunit = \"°C\"\n" + kHold, 3,
                   "`unit` is \"°C\"", "write `unit = \"C\"`"},
           Refused{kHead + "thickness = 38\n" + kHold, 4, "`thickness` is 38", "\"38 mm\""},
           Refused{kHead + "thickness = \"38\"\n" + kHold, 4, "`thickness` is \"38\"", "\"1.5 in\""},
           Refused{kHead + "thickness = \"3.8 cm\"\n" + kHold, 4, "\"3.8 cm\"", "in mm or in"},
           Refused{kHead + "thickness = \"0 mm\"\n" + kHold, 4, "\"0 mm\"", "more than 0"},
           Refused{kHead + "thickness = \"-2 mm\"\n" + kHold, 4, "\"-2 mm\"", "more than 0"},
           Refused{kHead + "flag = \"sen\"\n" + kHold, 4, "`flag` is \"sen\"", "did you mean `seen`?"},
           Refused{kHead + "titel = \"x\"\n" + kHold, 4, "`titel` is not a key of the procedure",
                   "did you mean `title`?"},
           Refused{kHead + "temperature_max = 650\n" + kHold, 4,
                   "`temperature_max` is not a key of the procedure", "known here: soakwright, number"},
           Refused{kHead + "\n[evaluatio]\n" + kHold, 5, "`evaluatio` is not a key",
                   "did you mean `evaluation`?"},
           Refused{kHead + "evaluation = \"simple\"\n" + kHold, 4, "`evaluation` is \"simple\"",
                   "[evaluation]"},
           Refused{kHead, 1, "no stage", "[[stage]]"},
           Refused{kHead + "stage = []\n", 4, "no stage", "[[stage]]"},
           Refused{kHead + "[stage]\nkind = \"heat\"\n", 4, "`stage` is a table", "[[stage]]"},
           Refused{kHead + "stage = [1]\n", 4, "`stage` is a list", "[[stage]]"},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("a procedure of more than 200 stages is refused before they are read") {
  const auto stages = [](std::size_t count) {
    std::string text = kHead;
    for (std::size_t i = 0; i < count; ++i) text += "[[stage]]\nkind = \"cool\"\nrate_max = 180\n";
    return text;
  };
  CHECK(procedure(stages(200)).stages.size() == 200);
  CHECK(unlike(parsed(stages(201)), Refused{stages(201), 604, "has 201 stages; at most 200", "split"}) == "");
}

TEST_CASE("keys of [evaluation] and [record] that are refused") {
  const auto evaluation = [](const std::string& line) {
    return kHead + "[evaluation]\n" + line + "\n" + kHold;
  };
  const auto whole = [](const std::string& line) { return kHead + "[record]\n" + line + "\n" + kHold; };
  for (const Refused& row : {
           Refused{evaluation("rate_window = 15"), 5, "`rate_window` is 15", "\"95 min\""},
           Refused{evaluation("rate_window = \"15 m\""), 5, "`rate_window` is \"15 m\"", "\"95 min\""},
           Refused{evaluation("rate_window = \"0 min\""), 5, "\"0 min\"", "more than 0"},
           Refused{evaluation("rate_window = \"-15 min\""), 5, "\"-15 min\"", "0 or more"},
           Refused{evaluation("interpolate_max = \"0 s\""), 5, "`interpolate_max` is \"0 s\"", "more than 0"},
           Refused{evaluation("in_range_min = \"-2 min\""), 5, "`in_range_min` is \"-2 min\"", "0 or more"},
           Refused{evaluation("decision_rule = \"guard\""), 5, "`decision_rule` is \"guard\"",
                   "did you mean `guarded`?"},
           Refused{evaluation("decision_rule = true"), 5, "`decision_rule` is true", "simple, guarded"},
           Refused{evaluation("excursion_allowed = 0"), 5, "`excursion_allowed` is 0", "\"90 s\""},
           Refused{evaluation("excursion_allowed = \"-1 s\""), 5, "`excursion_allowed` is \"-1 s\"",
                   "0 or more"},
           Refused{evaluation("excursion_allowed = { depth = 5 }"), 5,
                   "`time` is missing in `excursion_allowed`", "add"},
           Refused{evaluation("excursion_allowed = { time = \"3 min\", depth = -5 }"), 5, "`depth` is -5",
                   "0 or more"},
           Refused{evaluation("excursion_allowed = { time = \"3 min\", dept = 5 }"), 5,
                   "`dept` is not a key of `excursion_allowed`", "`depth`"},
           Refused{evaluation("temperature_max = 650"), 5, "`temperature_max` is not a key of [evaluation]",
                   "known here: rate_window"},
           Refused{whole("temperature_max = nan"), 5, "`temperature_max` is not a finite number",
                   "plain number"},
           Refused{whole("temperature_max = inf"), 5, "`temperature_max` is not a finite number",
                   "plain number"},
           Refused{whole("temperature_max = \"650 C\""), 5, "`temperature_max` is \"650 C\"", "plain number"},
           Refused{whole("start_temperature_max = -300"), 5, "`start_temperature_max` is -300",
                   "no such temperature"},
           Refused{whole("end_temperature_max = 1e9"), 5, "`end_temperature_max`", "no such temperature"},
           Refused{whole("gap_max = \"0 s\""), 5, "`gap_max`", "more than 0"},
           Refused{whole("gap_max = 2031-04-02"), 5, "`gap_max` is 2031-04-02", "duration"},
           Refused{whole("sampling_interval_max = \"60 sec\""), 5, "`sampling_interval_max` is \"60 sec\"",
                   "duration"},
           Refused{whole("thermocouples_min = 4.5"), 5, "`thermocouples_min` is 4.5", "whole number"},
           Refused{whole("thermocouples_min = 0"), 5, "`thermocouples_min` is 0", "from 1"},
           Refused{whole("thermocouples_min = 99999999999"), 5, "99999999999", "whole number"},
           Refused{whole("thermocouple_min = 4"), 5, "`thermocouple_min`",
                   "did you mean `thermocouples_min`?"},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("text of the file stays short and on one line in a message") {
  const std::string long_text(100'000, 'x');
  const std::string lines[] = {"unit = \"" + long_text + "\"", "unit = \"C\\n\\u001b[31m\"",
                               '"' + long_text + "\" = 1"};
  for (const std::string& line : lines) {
    const auto result = parsed("soakwright = \"procedure 1\"\nnumber = \"1\"\n" + line + "\n" + kHold);
    REQUIRE_FALSE(result.ok());
    for (const Problem& problem : result.problems()) {
      CHECK(problem.text().size() < 300);
      CHECK(problem.text().find_first_of("\n\x1b") == std::string::npos);
    }
  }
}
