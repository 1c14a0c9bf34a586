// SPDX-License-Identifier: GPL-3.0-or-later
// Bands of a local heat treatment, and the notes on thermocouples that do not fit them.
#include "core/evaluate/band_notes.h"

#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/evaluate/band_positions.h"
#include "core/procedure/job/job_file.h"
#include "core/wording/statement_words.h"
#include "tests/core/measure/made_procedure.h"
#include "tests/core/measure/made_record.h"
#include "tests/core/procedure/refusals.h"

using namespace soakwright;
using Catch::Matchers::Contains;

namespace {

const std::string kBand =
    "[[band]]\ndiameter = \"323.9 mm\"\nwall = \"25.4 mm\"\nsoak_band = \"120 mm\"\nheated_band = \"400 "
    "mm\"\n"
    "centre = \"1.2 m\"\n";
const std::string kJob = "soakwright = \"job 1\"\n";

/// Positions along the work in metres; the weld's centre is at 1.2 m.
Record record_with(double soak_m, double edge_m) {
  return MadeRecord::every(60, 5)
      .course("TC1", {{0, 20}})
      .course("TC2", {{0, 20}})
      .at("TC1", soak_m)
      .at("TC2", edge_m)
      .at_edge("TC2")
      .record();
}

Procedure any_procedure(const std::string& keys = {}) {
  return procedure_of(keys + "[[stage]]\nkind = \"cool\"\nrate_max = 100\n");
}

std::vector<std::string> notes(const Record& record, const std::string& job) {
  const Job read = job_of(job);
  Verdicts verdicts;
  verdicts.welds.resize(1);
  note_bands(record, any_procedure(), &read, verdicts);
  std::vector<std::string> texts;
  for (const Finding& finding : verdicts.findings) {
    CHECK(finding.kind == Finding::Kind::note);
    CHECK(finding.requirement.empty());
    texts.push_back(words(finding.what, PrintedNumbers{TemperatureUnit::celsius, record}));
  }
  return texts;
}

}  // namespace

TEST_CASE("the edge of the heated band of a pipe of 323.9 by 25.4 mm is 117.8 mm from the soak band") {
  // AWS D10.10 (2021), from memory: L = 2·√(R·t), R the inside radius. √(R·t) = 58.9 mm, L = 117.8 mm.
  const Record record = record_with(1.2, 1.4);
  const Procedure procedure = any_procedure();
  const auto all = bands_of(job_of(kBand), &procedure, record);
  REQUIRE(all.size() == 1);
  CHECK(all[0].inside_radius_mm == Approx(136.55));
  CHECK(all[0].edge_distance_mm / 2.0 == Approx(58.9).margin(0.05));
  CHECK(all[0].edge_distance_mm == Approx(117.8).margin(0.05));
  CHECK(all[0].heated_band_min_mm.value() == Approx(355.56).margin(0.05));
  CHECK_FALSE(all[0].heated_band_is_narrow());
}

TEST_CASE("the wall is the band's, else the weld's, else the procedure's") {
  const Record record = record_with(1.2, 1.4);
  const Procedure procedure = any_procedure("thickness = \"20 mm\"\n");
  const std::string band = "[[band]]\ndiameter = \"300 mm\"\n";
  CHECK(bands_of(job_of(band), &procedure, record)[0].wall_mm == 20.0);
  CHECK(bands_of(job_of(band + "wall = \"10 mm\"\n"), &procedure, record)[0].wall_mm == 10.0);
  CHECK(bands_of(job_of(band + "[[weld]]\nnumber = \"W-1\"\nthickness = \"12 mm\"\n"), &procedure, record)[0]
            .wall_mm == 12.0);
  CHECK(bands_of(job_of(band), nullptr, record).empty());
}

TEST_CASE("a thermocouple that does not fit the bands is a note") {
  struct Row {
    double soak_m, edge_m;
    std::vector<std::string> says;
  };
  // The soak band ends 60 mm from the centre, its heated band's edge is 177.8 mm from it, the heated band 200
  // mm.
  const std::vector<Row> rows = {
      {1.2, 1.4, {}},
      {1.26, 1.0, {}},
      {1.2601, 1.4, {"TC1 is 60.1 mm from the centre of the weld, outside the soak band of 120 mm."}},
      {1.2,
       1.37,
       {"TC2, at the edge of the heated band, is 170 mm from the centre of the weld; the edge is at least "
        "177.8 mm"}},
      {1.2, 1.41, {"TC2 is 210 mm from the centre of the weld, beyond the heated band of 400 mm."}},
      {0.9, 1.2, {"TC1 is 300 mm", "TC2, at the edge of the heated band, is 0 mm"}},
  };
  for (const Row& row : rows) {
    INFO(row.soak_m << ", " << row.edge_m);
    const auto texts = notes(record_with(row.soak_m, row.edge_m), kBand);
    REQUIRE(texts.size() == row.says.size());
    for (std::size_t i = 0; i < texts.size(); ++i) CHECK_THAT(texts[i], Contains(row.says[i]));
  }
  CHECK_THAT(notes(record_with(1.2, 1.37), kBand)[0], Contains("from memory, check against your edition"));
}

TEST_CASE("a heated band that is too narrow and a thermocouple without a position are notes") {
  const std::string narrow =
      "[[band]]\ndiameter = \"323.9 mm\"\nwall = \"25.4 mm\"\nsoak_band = \"120 mm\"\nheated_band = \"300 "
      "mm\"\n";
  const Record record = MadeRecord::every(60, 5).course("TC1", {{0, 20}}).record();
  const auto texts = notes(record, narrow);
  REQUIRE(texts.size() == 2);
  CHECK_THAT(texts[0], Contains("The heated band of 300 mm is narrower than 355.6 mm"));
  CHECK_THAT(texts[1], Contains("no position for TC1"));
}

TEST_CASE("a band that makes no sense is refused with its line") {
  const std::string pipe = "[[band]]\ndiameter = \"300 mm\"\n";
  const std::string welds = "[[weld]]\nnumber = \"W-1\"\n[[weld]]\nnumber = \"W-2\"\n";
  const std::vector<Refused> rows = {
      {kJob + "[[band]]\nwall = \"10 mm\"\n", 2, "diameter", "diameter"},
      {kJob + pipe + "wall = \"150 mm\"\n", 4, "twice the wall is as much as the diameter", "outside"},
      {kJob + pipe + "heated_band = \"300 mm\"\n", 4, "`heated_band` does nothing without `soak_band`",
       "soak band"},
      {kJob + pipe + "centre = \"1 m\"\n", 4, "`centre` does nothing without `soak_band`", "soak band"},
      {kJob + pipe + "soak_band = \"300 mm\"\nheated_band = \"200 mm\"\n", 5, "`soak_band`", ""},
      {kJob + welds + pipe, 6, "this [[band]] names none", "weld ="},
      {kJob + welds + pipe + "weld = \"W-3\"\n", 6, "the job has no weld \"W-3\"", "W-1"},
      {kJob + pipe + pipe, 4, "the [[band]] at line 2 is of the same weld", "keep one"},
  };
  for (const Refused& row : rows) CHECK(unlike(parse_job(row.text, "given.toml"), row) == "");
  const Job job = job_of(pipe);
  CHECK_THAT(all_texts(check_compatibility(any_procedure(), &job)), Contains("has no wall thickness"));
  CHECK_THAT(all_texts(check_compatibility(any_procedure("thickness = \"150 mm\"\n"), &job)),
             Contains("twice the wall is as much as the diameter"));
}
