// SPDX-License-Identifier: GPL-3.0-or-later
// A procedure written as text reads back as the same procedure, in either unit.
#include "core/procedure/procedure_text.h"

#include <filesystem>
#include <string>

#include <catch2/catch.hpp>

#include "core/procedure/procedure_file.h"
#include "tests/core/procedure/refusals.h"

using namespace soakwright;
using Catch::Matchers::Contains;

namespace {

const std::string kEverything = R"(soakwright = "procedure 1"
number = "HTP \"9\""
revision = "C"
title = "All keys \\ and a tab\t"
unit = "F"
thickness = "1.5 in"
source = "S"
edition = "E"
clause = "C"
flag = "seen"
[evaluation]
rate_window = "10 min"
decision_rule = "guarded"
interpolate_max = "90 s"
excursion_allowed = { time = "3 min", depth = 9 }
in_range_min = "1 min"
[record]
temperature_max = 1202
start_temperature_max = 600
end_temperature_max = 601.5
gap_max = "5 min"
sampling_interval_max = "60 s"
thermocouples_min = 4
[[stage]]
kind = "heat"
above = 800
below = 1100
rate_max = { over = 400, per = "in", at_least = 100, at_most = 400 }
rate_min = 35
spread_max = 250
spread_within = "15 ft"
flag = "memory"
[[stage]]
kind = "hold"
low = 1100
high = 1150
time_min = { points = [["0.25 in", "15 min"], ["50 mm", "2 h"]], beyond = "15 min per 25 mm", step = "0.25 in" }
time_max = "4.5 h"
count = "accumulated"
excursion_time_max = "97.5 min"
spread_max = 54
edge_fraction_min = 0.5
tempering_min = 17.9
tempering_max = 20
[[stage]]
kind = "cool"
rate_max = 333
[[stage]]
kind = "maintain"
low = 212
during = "welding"
flag = "proposal"
)";

/// As read back, without what differs by nature.
Procedure bare(Procedure procedure) {
  procedure.file.clear();
  procedure.sha256.clear();
  for (Stage& stage : procedure.stages) stage.line = 0;
  return procedure;
}

}  // namespace

TEST_CASE("every key survives being written and read, in the file's unit and in the other") {
  Procedure procedure = accepted(parse_procedure(kEverything, "all.toml"));
  for (const TemperatureUnit unit : {TemperatureUnit::fahrenheit, TemperatureUnit::celsius}) {
    procedure.unit = unit;
    const std::string text = procedure_text(procedure);
    INFO(text);
    CHECK(bare(accepted(parse_procedure(text, "back.toml"))) == bare(procedure));
  }
}

TEST_CASE("in its own unit a procedure keeps the round figures that were typed") {
  const std::string text = procedure_text(accepted(parse_procedure(kEverything, "all.toml")));
  for (const char* line :
       {"\nabove = 800\n", "\nrate_max = { over = 400, per = \"in\", at_least = 100, at_most = 400 }\n",
        "\nspread_within = \"15 ft\"\n", "\nthickness = \"1.5 in\"\n", "\nend_temperature_max = 601.5\n",
        "\nexcursion_time_max = \"97.5 min\"\n", "\nrate_max = 333\n",
        "points = [[\"0.25 in\", \"15 min\"], [\"50 mm\", \"2 h\"]], beyond = \"15 min per 25 mm\""})
    CHECK_THAT(text, Contains(line));
}

TEST_CASE("600 F/h written in C is the exact interval") {
  // NIST SP 811 B.8: an interval of 1 F is 5/9 K. 600 F/h is 333.3 C/h, not 315.6.
  Procedure procedure =
      accepted(parse_procedure("soakwright = \"procedure 1\"\nnumber = \"1\"\nunit = \"F\"\n[[stage]]\nkind "
                               "= \"cool\"\nrate_max = 600\n",
                               "f.toml"));
  procedure.unit = TemperatureUnit::celsius;
  CHECK_THAT(procedure_text(procedure), Contains("rate_max = 333.3333333333333"));
}

TEST_CASE("comments stand above the part that they are about") {
  const Procedure procedure = accepted(parse_procedure(kEverything, "all.toml"));
  const std::string text = procedure_text(procedure, {{"head"}, {"of the record"}, {{"one", "two"}}});
  CHECK(text.starts_with("# head\nsoakwright = "));
  CHECK_THAT(text, Contains("\n# of the record\n[record]\n"));
  CHECK_THAT(text, Contains("\n# one\n# two\n[[stage]]\nkind = \"heat\"\n"));
}

TEST_CASE("the procedures of the sample logs and cases survive being written and read") {
  std::size_t count = 0;
  for (const char* folder : {"sample-logs", "tests/cases"})
    for (const auto& entry : std::filesystem::recursive_directory_iterator(
             std::filesystem::path(SOAKWRIGHT_SOURCE_DIR) / folder)) {
      if (entry.path().extension() != ".toml") continue;
      const auto procedure = read_procedure(entry.path().string());
      if (!procedure) continue;  // a job, a review, or a file made to be refused
      INFO(entry.path().string());
      CHECK(bare(accepted(parse_procedure(procedure_text(procedure.value()), "back.toml"))) ==
            bare(procedure.value()));
      ++count;
    }
  CHECK(count > 20);
}
