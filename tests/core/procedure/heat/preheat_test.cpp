// SPDX-License-Identifier: GPL-3.0-or-later
// Carbon equivalents, published minimum preheat, and what a job may say about them.
#include "core/procedure/heat/preheat.h"

#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/procedure/job/job_file.h"
#include "core/procedure/procedure_file.h"
#include "tests/core/measure/made_procedure.h"
#include "tests/core/procedure/shipped_rules.h"

using namespace soakwright;
using Catch::Matchers::Contains;

namespace {

const std::string kSteel =
    "{ C = 0.16, Si = 0.3, Mn = 1.2, Cr = 0.1, Mo = 0.05, Ni = 0.2, Cu = 0.25, V = 0.01, B = 0.0003 }";
const std::string kJob = "soakwright = \"job 1\"\n";

Procedure maintained(const std::string& thickness) {
  return procedure_of(thickness + "[[stage]]\nkind = \"maintain\"\nlow = 50\nduring = \"welding\"\n");
}
std::string clashes(const std::string& job, const std::string& thickness) {
  const Job read = job_of(job);
  return all_texts(check_compatibility(maintained(thickness), &read));
}

}  // namespace

TEST_CASE("carbon equivalents of a composition, worked by hand") {
  // CE(IIW) = 0.16 + 1.2/6 + 0.16/5 + 0.45/15; CET = 0.16 + 1.25/10 + 0.35/20 + 0.2/40;
  // Pcm (Ito and Bessyo, 1968) = 0.16 + 0.3/30 + 1.55/20 + 0.2/60 + 0.05/15 + 0.01/10 + 5 · 0.0003.
  const auto found = carbon_equivalents(*job_of("composition = " + kSteel).composition);
  REQUIRE(found.size() == 3);
  CHECK(found[0].percent.value() == Approx(0.422).epsilon(1e-12));
  CHECK(found[1].percent.value() == Approx(0.3075).epsilon(1e-12));
  CHECK(found[2].percent.value() == Approx(0.25666666666666667).epsilon(1e-12));
}

TEST_CASE("an element that is not given leaves open what needs it") {
  const auto found = carbon_equivalents(
      *job_of("[composition]\nC = 0.2\nMn = 1\nCr = 0\nMo = 0\nNi = 0\nCu = 0\n").composition);
  CHECK(found[0].missing == std::vector<Element>{Element::V});
  CHECK_FALSE(found[0].percent);
  CHECK(found[1].percent.value() == Approx(0.3));
  CHECK(found[2].missing == std::vector<Element>{Element::Si, Element::V, Element::B});
}

TEST_CASE("the published minimum preheat is that of the shipped rule") {
  for (const double millimetres : {3.0, 12.0, 20.0, 20.5, 38.0, 50.0, 65.0, 66.0, 200.0}) {
    const Draft draft = accepted(draft_of("aws-d1-1-preheat-category-b", mm(millimetres)));
    const auto& maintain = std::get<MaintainStage>(draft.procedure.stages.at(0).specified);
    CHECK(aws_category_b_preheat(mm(millimetres)) == maintain.low);
  }
  CHECK_FALSE(aws_category_b_preheat(mm(2.99)));
}

TEST_CASE("the published minimum stands beside the lowest that the procedure maintains") {
  // AWS D1.1, category B: above 38 to 65 mm 65 C.
  const Job job = job_of("minimum_preheat = \"AWS D1.1 category B\"\n");
  const Procedure procedure = maintained("thickness = \"40 mm\"\n");
  const auto found = preheat_of(job, &procedure);
  REQUIRE(found.size() == 1);
  CHECK(found[0].published_minimum->celsius() == 65.0);
  CHECK(found[0].procedure_minimum->celsius() == 50.0);
  CHECK(found[0].procedure_stage == 1);
  CHECK(found[0].procedure_is_below());
  const Procedure thinner = maintained("thickness = \"38 mm\"\n");
  CHECK_FALSE(preheat_of(job, &thinner)[0].procedure_is_below());
  CHECK(preheat_of(job_of("weld = \"W-1\"\n"), &procedure).empty());
}

TEST_CASE("each weld has its own composition and thickness, or the job's") {
  const Job job = job_of(
      "composition = { C = 0.2 }\n[[weld]]\nnumber = \"W-1\"\nthickness = \"70 mm\"\n"
      "minimum_preheat = \"AWS D1.1 category B\"\n[[weld]]\nnumber = \"W-2\"\ncomposition = " +
      kSteel + "\n");
  const auto found = preheat_of(job, nullptr);
  REQUIRE(found.size() == 2);
  CHECK(found[0].published_minimum->celsius() == 110.0);
  CHECK_FALSE(found[0].equivalents[0].percent);
  CHECK_FALSE(found[1].minimum_asked_for);
  CHECK(found[1].equivalents[0].percent.value() == Approx(0.422));
}

TEST_CASE("a composition that does not add up is refused with its line") {
  const std::vector<Refused> rows = {
      {kJob + "[composition]\nC = -0.1\n", 3, "`C` is -0.1", "0 or more"},
      {kJob + "[composition]\nC = 16\n", 3, "`C` is 16 %, more than any weldable steel has", "at most 1"},
      {kJob + "composition = { Cr = 30, Ni = 40, Mn = 20, Mo = 10, Cu = 1 }\n", 2, "adds up to 101 %",
       "100 %"},
      {kJob + "[composition]\n", 2, "names no element", "per cent by mass"},
      {kJob + "[composition]\nC = 0.1\nMg = 0.1\n", 4, "`Mg` is not a key of the composition", ""},
      {kJob + "minimum_preheat = \"AWS D1.1 category C\"\n", 2, "minimum_preheat", "AWS D1.1 category B"},
      {kJob + "composition = { C = 0.2 }\n[[weld]]\nnumber = \"W-1\"\ncomposition = { C = 0.1 }\n", 2,
       "`composition` counts for no weld", "leave it out"},
  };
  for (const Refused& row : rows) CHECK(unlike(parse_job(row.text, "given.toml"), row) == "");
}

TEST_CASE("a minimum preheat without a thickness, or for one outside of the table, is refused") {
  const std::string job = "minimum_preheat = \"AWS D1.1 category B\"\n";
  CHECK_THAT(clashes(job, ""), Contains("depends on the thickness, but no thickness is given"));
  CHECK_THAT(clashes(job, "thickness = \"2 mm\"\n"), Contains("does not cover the thickness, 2 mm"));
  CHECK(clashes(job, "thickness = \"3 mm\"\n").find("minimum_preheat") == std::string::npos);
}

TEST_CASE("every key of composition, minimum preheat and band is read where it belongs") {
  struct Place {
    const char* opening;
    std::vector<const char*> keys;
  };
  const std::vector<Place> places = {
      {"", {"composition", "minimum_preheat", "band"}},
      {"[[weld]]\nnumber = \"W-1\"\n", {"composition", "minimum_preheat"}},
      {"[composition]\n", {"C", "Si", "Mn", "Cr", "Mo", "Ni", "Cu", "V", "B"}},
      {"[[band]]\n", {"weld", "diameter", "wall", "soak_band", "heated_band", "centre"}},
  };
  for (const Place& place : places)
    for (const std::string key : place.keys) {
      INFO(place.opening << key);
      const auto job = parse_job(kJob + place.opening + key + " = 06:40:00\n", "given.toml");
      REQUIRE_FALSE(job.ok());
      CHECK_THAT(all_texts(job.problems()), Contains("`" + key + "` is a time of day"));
    }
}
