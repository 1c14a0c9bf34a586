// SPDX-License-Identifier: GPL-3.0-or-later
// A procedure and a job that are each right but do not fit together.
#include <string>

#include <catch2/catch.hpp>

#include "core/procedure/job/job_file.h"
#include "tests/core/procedure/parsed_procedure.h"

using namespace soakwright;
using given_procedure::kHead;

namespace {

const std::string kRateRule =
    "[[stage]]\nkind = \"heat\"\nrate_max = { over = 5500, per = \"mm\" }\nrate_min = 20\n";
const std::string kTimeRule =
    "[[stage]]\nkind = \"hold\"\nlow = 590\ntime_max = \"4 h\"\n"
    "time_min = { points = [[\"6 mm\", \"15 min\"], [\"50 mm\", \"2 h\"]], beyond = \"15 min per 25 mm\" }\n";
const std::string kPlaces = "[[stage]]\nkind = \"cool\"\nspread_max = 150\nspread_within = \"4.6 m\"\n";

Problems clashes(const std::string& procedure, const std::string& job) {
  const auto specified = parse_procedure(kHead + procedure, "htp.toml");
  const auto done = parse_job("soakwright = \"job 1\"\n" + job, "job.toml");
  REQUIRE(specified.ok());
  REQUIRE(done.ok());
  return check_compatibility(specified.value(), &done.value());
}
Problems clashes(const std::string& procedure) {
  const auto specified = parse_procedure(kHead + procedure, "htp.toml");
  REQUIRE(specified.ok());
  return check_compatibility(specified.value(), nullptr);
}

void check_only(const Problems& problems, const std::string& file, std::size_t line,
                const std::string& what) {
  INFO(all_texts(problems));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].kind == ProblemKind::bad_input);
  CHECK(problems[0].file == file);
  CHECK(problems[0].line == line);
  CHECK_THAT(problems[0].what, Catch::Contains(what));
  CHECK_FALSE(problems[0].help.empty());
}

}  // namespace

TEST_CASE("a thickness rule needs a thickness, from the procedure or from every weld of the job") {
  const std::string thickness = "thickness = \"38 mm\"\n";
  check_only(clashes(kRateRule), "htp.toml", 4,
             "`rate_max` depends on the thickness, but no thickness is given");
  check_only(clashes(kTimeRule), "htp.toml", 4,
             "`time_min` depends on the thickness, but no thickness is given");
  CHECK(clashes(thickness + kRateRule + kTimeRule).empty());
  CHECK(clashes(thickness + kRateRule, "weld = \"W-117\"\n").empty());
  CHECK(clashes(thickness + kRateRule, "[[weld]]\nnumber = \"W-118\"\n").empty());
  CHECK(clashes(kRateRule, "[[weld]]\nnumber = \"W-118\"\nthickness = \"22 mm\"\n").empty());
  check_only(clashes(kRateRule, "weld = \"W-117\"\n"), "htp.toml", 4, "no thickness is given");
  check_only(clashes(kRateRule,
                     "[[weld]]\nnumber = \"W-118\"\nthickness = \"22 mm\"\n[[weld]]\nnumber = \"W-119\"\n"),
             "htp.toml", 4, "no thickness is given for weld W-119");
}

TEST_CASE("a missing thickness is asked for where it can be written") {
  CHECK_THAT(clashes(kRateRule)[0].help, Catch::Contains("add `thickness = \"…\"` to the procedure"));
  // `weld = "W-117"` has no room for one.
  const std::string help = clashes(kRateRule, "weld = \"W-117\"\n")[0].help;
  CHECK_THAT(help, Catch::Contains("[[weld]], `number = \"W-117\"`, `thickness = \"…\"`"));
}

TEST_CASE("a rule may not come out beyond the limit on its other side") {
  // 5500 / 300 mm = 18.3 C/h, under the 20 C/h required; 2 h + 15 min for each 25 mm over 50 is 4 h 30 min at
  // 300 mm.
  check_only(clashes("thickness = \"300 mm\"\n" + kRateRule), "htp.toml", 5,
             "`rate_max` comes out below `rate_min`");
  check_only(clashes("thickness = \"300 mm\"\n" + kTimeRule), "htp.toml", 5,
             "`time_min` comes out above `time_max`");
  // At the limit it still fits: 275 mm give 20 C/h, 250 mm give 4 h.
  CHECK(clashes("thickness = \"275 mm\"\n" + kRateRule).empty());
  CHECK(clashes("thickness = \"250 mm\"\n" + kTimeRule).empty());
}

TEST_CASE("spread_within needs the place of every evaluated thermocouple") {
  check_only(clashes(kPlaces), "htp.toml", 4, "no job says where");
  check_only(clashes(kPlaces, "work = \"drum\"\n"), "htp.toml", 4, "no job says where");
  const std::string placed = "[[thermocouple]]\ncolumn = \"TC1\"\nposition = \"1 m\"\n";
  CHECK(clashes(kPlaces, placed).empty());
  check_only(clashes(kPlaces, placed + "[[thermocouple]]\ncolumn = \"TC2\"\nname = \"top\"\n"), "job.toml", 5,
             "thermocouple \"top\" has no `position`, and stage 1 of the procedure");
  // Those that are not evaluated may sit anywhere.
  for (const char* const other : {"role = \"air\"", "role = \"off\"", "role = \"set point\"",
                                  "role = \"spare\"", "zone = \"edge\"", "spare_for = \"TC1\""})
    CHECK(clashes(kPlaces, placed + "[[thermocouple]]\ncolumn = \"TC2\"\n" + other + "\n").empty());
  // Without spread_within nobody asks.
  CHECK(clashes("[[stage]]\nkind = \"cool\"\nspread_max = 150\n", "[[thermocouple]]\ncolumn = \"TC2\"\n")
            .empty());
}

TEST_CASE("a guarded decision needs type and tolerance of every thermocouple on the work") {
  const std::string guarded =
      "[evaluation]\ndecision_rule = \"guarded\"\n[[stage]]\nkind = \"cool\"\nrate_max = 180\n";
  const std::string first = "[[thermocouple]]\ncolumn = \"TC1\"\n";
  check_only(clashes(guarded), "htp.toml", 0, "no job gives the thermocouples' `type` and `tolerance`");
  check_only(clashes(guarded, "work = \"drum\"\n"), "htp.toml", 0, "no job gives");
  check_only(clashes(guarded, first), "job.toml", 2,
             "thermocouple \"TC1\" has neither `type` nor `tolerance`");
  check_only(clashes(guarded, first + "type = \"K\"\n"), "job.toml", 2, "\"TC1\" has no `tolerance`");
  check_only(clashes(guarded, first + "tolerance = \"class 1\"\n"), "job.toml", 2, "\"TC1\" has no `type`");
  CHECK(clashes(guarded, first + "type = \"K\"\ntolerance = \"class 1\"\n").empty());
  // A tolerance in degrees needs no table, so no type.
  CHECK(clashes(guarded, first + "tolerance = \"±1.1 C\"\n").empty());
  // A spare and one at the edge count; air, set point and off do not.
  for (const char* const other : {"role = \"spare\"", "zone = \"edge\"", "role = \"control\""})
    CHECK(clashes(guarded, first + other + "\n").size() == 1);
  for (const char* const other : {"role = \"air\"", "role = \"set point\"", "role = \"off\""})
    CHECK(clashes(guarded, first + other + "\n").empty());
  CHECK(clashes("[evaluation]\ndecision_rule = \"simple\"\n[[stage]]\nkind = \"cool\"\nrate_max = 180\n")
            .empty());
}

TEST_CASE("a maintain stage whose period the job does not have is left to the evaluation") {
  CHECK(clashes("[[stage]]\nkind = \"maintain\"\nlow = 120\nduring = \"welding\"\n").empty());
}

TEST_CASE("all clashes come in one answer") {
  CHECK(clashes("[evaluation]\ndecision_rule = \"guarded\"\n" + kRateRule + kTimeRule + kPlaces).size() == 4);
}
