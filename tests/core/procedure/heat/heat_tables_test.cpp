// SPDX-License-Identifier: GPL-3.0-or-later
// [hydrogen] and [qualified] of a job, and the constant of the tempering parameter: what is accepted and what
// is refused.
#include <catch2/catch.hpp>

#include "core/procedure/job/job_file.h"
#include "core/procedure/procedure_file.h"
#include "tests/core/procedure/refusals.h"

using namespace soakwright;

namespace {

const std::string kJob = "soakwright = \"job 1\"\n";

Result<Job> parsed(const std::string& body) { return parse_job(kJob + body, "given.toml"); }
HydrogenEntry hydrogen(const std::string& keys) { return *accepted(parsed("[hydrogen]\n" + keys)).hydrogen; }

Result<Procedure> procedure(const std::string& keys) {
  return parse_procedure("soakwright = \"procedure 1\"\nnumber = \"P\"\nunit = \"F\"\n" + keys +
                             "[[stage]]\nkind = \"hold\"\nlow = 1100\ntime_min = \"1 h\"\n",
                         "given.toml");
}

constexpr const char* kTyped = "temperature_min = \"300 C\"\ntemperature_max = \"700 F\"\n";

}  // namespace

TEST_CASE("a published diffusivity comes with its own temperatures") {
  const HydrogenEntry plate = hydrogen("shape = \"plate\"\ndiffusivity = \"Coe and Moreton 1969\"\n");
  CHECK(plate.shape == HydrogenShape::plate);
  CHECK_FALSE(plate.thickness);
  CHECK(plate.diffusivity == published_diffusivity(PublishedDiffusivity::coe_and_moreton_1969));
  CHECK(plate.line == 2);
  const HydrogenEntry bar =
      hydrogen("shape = \"cylinder\"\ndiameter = \"2 in\"\ndiffusivity = \"EUROFER'97\"\n");
  CHECK(bar.shape == HydrogenShape::cylinder);
  CHECK(bar.diameter->millimetres() == 50.8);
  CHECK(bar.diffusivity == published_diffusivity(PublishedDiffusivity::eurofer_97));
}

TEST_CASE("a typed diffusivity is a number or a formula, with the temperatures between which it holds") {
  for (const char* const written : {"5.1e-5 cm2/s", "5.1e-5 cm²/s", "5.1e-9 m2/s", "5.1e-3 mm2/s"}) {
    CAPTURE(written);
    const HydrogenEntry entry =
        hydrogen(std::string{"shape = \"plate\"\nthickness = \"25 mm\"\ndiffusivity = \""} + written +
                 "\"\nsource = \"lab note 7\"\n" + kTyped);
    CHECK(std::get<ConstantDiffusivity>(entry.diffusivity.law).m2_per_s == Approx(5.1e-9).epsilon(1e-12));
    CHECK(entry.diffusivity.low.celsius() == 300.0);
    CHECK(entry.diffusivity.high.celsius() == Approx(371.1111).margin(1e-4));
    CHECK(entry.diffusivity.source == "lab note 7");
  }
  for (const char* const written : {"22.3 kJ/mol", "22300 J/mol"}) {
    const HydrogenEntry entry =
        hydrogen(std::string{"shape = \"plate\"\nd0 = \"4.57e-7 m2/s\"\nactivation_energy = \""} + written +
                 "\"\n" + kTyped);
    const auto& law = std::get<ArrheniusDiffusivity>(entry.diffusivity.law);
    CHECK(law.d0_m2_per_s == 4.57e-7);
    CHECK(law.q_j_per_mol == Approx(22300.0));
    // The published formula by its two numbers.
    CHECK(diffusivity_at(law, 320.0) ==
          Approx(diffusivity_at(PublishedDiffusivity::eurofer_97, 320.0)).epsilon(1e-12));
  }
}

TEST_CASE("[hydrogen] that cannot be evaluated is refused with what helps") {
  const std::string plate = "[hydrogen]\nshape = \"plate\"\n";
  const std::string coe = "diffusivity = \"Coe and Moreton 1969\"\n";
  const Refused rows[] = {
      {"[hydrogen]\n" + coe, 2, "`shape`", ""},
      {"[hydrogen]\nshape = \"ball\"\n" + coe, 3, "`shape`", "plate"},
      {plate, 2, "no `diffusivity`", "Coe and Moreton 1969"},
      {plate + "diffusivity = \"Coe\"\n", 4, "`diffusivity`", "Coe and Moreton 1969"},
      {plate + "diffusivity = 5.1e-5\n", 4, "`diffusivity`", "with its unit"},
      {plate + "diffusivity = \"5.1e-5 in2/s\"\n" + kTyped, 4, "`diffusivity`", "5.1e-5 cm2/s"},
      {plate + "diffusivity = \"-5.1e-5 cm2/s\"\n" + kTyped, 4, "`diffusivity`", "more than 0"},
      {plate + "diffusivity = \"5.1e-1 cm2/s\"\n" + kTyped, 4, "no diffusivity of hydrogen", "unit"},
      {plate + "diffusivity = \"5.1e-20 cm2/s\"\n" + kTyped, 4, "no diffusivity of hydrogen", "unit"},
      {plate + "d0 = \"4.57e-7 m2/s\"\nactivation_energy = \"22.3e3 kJ/mol\"\n" + kTyped, 4,
       "no diffusivity of hydrogen", "unit"},
      {plate + "diffusivity = \"5.1e-5 cm2/s\"\n", 2, "between which it holds", "temperature_min"},
      {plate + "diffusivity = \"5.1e-5 cm2/s\"\ntemperature_min = \"300 C\"\n", 2, "between which it holds",
       "temperature_max"},
      {plate + "diffusivity = \"5.1e-5 cm2/s\"\ntemperature_min = \"400 C\"\ntemperature_max = \"300 C\"\n",
       6, "temperature_min", "changed places"},
      {plate + coe + "temperature_min = \"100 C\"\n", 5, "`temperature_min` belongs", "leave it out"},
      {plate + coe + "source = \"a book\"\n", 5, "`source` belongs", "leave it out"},
      {plate + coe + "d0 = \"4.57e-7 m2/s\"\n", 5, "twice", "diffusivity"},
      {plate + "d0 = \"4.57e-7 m2/s\"\n" + kTyped, 2, "one is missing", "activation_energy"},
      {plate + "activation_energy = \"22.3 kJ/mol\"\n" + kTyped, 2, "one is missing", "d0"},
      {plate + coe + "thickness = \"-25 mm\"\n", 5, "`thickness`", "more than 0"},
      {plate + coe + "thickness = 25\n", 5, "`thickness`", "in mm or in"},
      {plate + coe + "diameter = \"25 mm\"\n", 5, "`diameter` is a cylinder's", "thickness"},
      {"[hydrogen]\nshape = \"cylinder\"\n" + coe, 2, "without its `diameter`", "diameter"},
      {"[hydrogen]\nshape = \"cylinder\"\ndiameter = \"9 mm\"\n" + coe + "thickness = \"9 mm\"\n", 6,
       "`thickness` is a plate's", "diameter"},
      {plate + coe + "after = \"welding\"\n", 5, "no such period", "[[period]]"},
      {plate + coe + "after = \"weldin\"\n[[period]]\nname = \"welding\"\nfrom = 0\nto = 10\n", 5,
       "no such period", "welding"},
  };
  for (const Refused& row : rows) {
    CHECK(unlike(parsed(row.text), row) == "");
  }
}

TEST_CASE("a plate needs a thickness from somewhere, for each weld") {
  const auto problems = [](const std::string& job_keys, const std::string& procedure_keys) {
    const Job job =
        accepted(parsed(job_keys + "[hydrogen]\nshape = \"plate\"\ndiffusivity = \"EUROFER'97\"\n"));
    return all_texts(check_compatibility(accepted(procedure(procedure_keys)), &job));
  };
  CHECK_THAT(problems("", ""), Catch::Contains("[hydrogen] has no `thickness`, and none is given"));
  CHECK(problems("", "thickness = \"25 mm\"\n").empty());
  const std::string welds = "[[weld]]\nnumber = \"A\"\nthickness = \"20 mm\"\n[[weld]]\nnumber = \"B\"\n";
  CHECK_THAT(problems(welds, ""), Catch::Contains("for weld B") && !Catch::Contains("for weld A"));
}

TEST_CASE("[qualified] gives a parameter or holds, and always its source") {
  const auto qualified = [](const std::string& keys) {
    return *accepted(parsed("[qualified]\nsource = \"PQR 12\"\n" + keys)).qualified;
  };
  CHECK(qualified("parameter = 18.6\n").parameter == 18.6);
  const QualifiedEntry holds = qualified("holds = [[\"620 C\", \"8 h\"], [\"1100 F\", \"90 min\"]]\n");
  REQUIRE(holds.holds.size() == 2);
  CHECK(holds.holds[0].at.celsius() == 620.0);
  CHECK(holds.holds[0].seconds == 8 * 3600.0);
  CHECK(holds.holds[1].at.celsius() == Approx(593.3333).margin(1e-4));
  CHECK(holds.source == "PQR 12");
  const std::string head = "[qualified]\nsource = \"PQR 12\"\n";
  const Refused rows[] = {
      {"[qualified]\nparameter = 18.6\n", 2, "`source`", ""},
      {"[qualified]\nparameter = 18.6\nsource = \"\"\n", 4, "`source` is empty", "name"},
      {head, 2, "nothing that can be compared", "parameter"},
      {head + "parameter = 18.6\nholds = [[\"620 C\", \"8 h\"]]\n", 2, "both", "holds"},
      {head + "parameter = 18600\n", 4, "`parameter`", "divided by 1000"},
      {head + "parameter = -1\n", 4, "`parameter`", "more than 0"},
      {head + "parameter = nan\n", 4, "not a finite number", "plain number"},
      {head + "holds = []\n", 4, "`holds`", "620 C"},
      {head + "holds = [[\"620 C\"]]\n", 4, "`holds[1]`", "620 C"},
      {head + "holds = [[\"620\", \"8 h\"]]\n", 4, "`holds[1]`", "with its unit"},
      {head + "holds = [[\"620 C\", \"0 h\"]]\n", 4, "`holds[1]`", "more than 0"},
  };
  for (const Refused& row : rows) CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("the constant of the tempering parameter is 20 unless the procedure gives another") {
  CHECK(accepted(procedure("")).evaluation.tempering_constant == 20.0);
  const Procedure found =
      accepted(procedure("[evaluation]\ntempering_constant = 18.5\ntempering_reference = 1112\n"));
  CHECK(found.evaluation.tempering_constant == 18.5);
  CHECK(found.evaluation.tempering_reference->celsius() == Approx(600.0));
  for (const auto& [keys, what, help] :
       {std::tuple{"tempering_constant = inf\n", "not a finite number", "plain number"},
        std::tuple{"tempering_constant = nan\n", "not a finite number", "plain number"},
        std::tuple{"tempering_constant = -20\n", "`tempering_constant`", "from 10 to 30"},
        std::tuple{"tempering_constant = 9.9\n", "`tempering_constant`", "from 10 to 30"},
        std::tuple{"tempering_constant = 20000\n", "`tempering_constant`", "from 10 to 30"},
        std::tuple{"tempering_reference = 100\n", "at which no steel tempers", "holding temperature"},
        std::tuple{"tempering_constant = \"20\"\n", "`tempering_constant`", "plain number"}})
    CHECK(unlike(procedure(std::string{"[evaluation]\n"} + keys), {keys, 5, what, help}) == "");
}
