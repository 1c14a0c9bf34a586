// SPDX-License-Identifier: GPL-3.0-or-later
// What the heat did: tempering over the records of a weld, beside what was qualified, and hydrogen left.
#include <cmath>

#include <catch2/catch.hpp>

#include "core/measure/hydrogen.h"
#include "core/measure/tempering.h"
#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;

namespace {

const std::string kHold = "[[stage]]\nkind = \"hold\"\nlow = 590\ntime_min = \"1 min\"\n";

MadeRecord level(double celsius, double hours, const std::string& name = "TC1") {
  const auto rows = static_cast<std::size_t>(std::lround(hours * 60.0)) + 1;
  return MadeRecord::every(60, rows).column(name, std::vector<double>(rows, celsius));
}

PreviousCycle before(int cycle, const MadeRecord& made, const std::string& procedure) {
  const auto record = std::make_shared<Record>(made.record());
  const Procedure specified = procedure_of(procedure);
  const auto ground = prepared_traces_for(*record, specified, nullptr);
  return {cycle, evaluate(*record, specified, nullptr, *ground).requirements, record, nullptr, ground};
}

Verdicts over(const std::vector<PreviousCycle>& previous, const MadeRecord& made,
              const std::string& procedure, const std::string& job_keys = {}) {
  const Record record = made.record();
  const Procedure specified = procedure_of(procedure);
  const Job job = job_of("cycle = 3\n" + job_keys);
  return evaluate(record, specified, &job, *prepared_traces_for(record, specified, nullptr), previous);
}

double hours_at_590(double celsius, double hours) {
  return equivalent_hours(parameter_of(celsius, hours, 20.0), 590, 20.0);
}

const std::string kPlate = "[hydrogen]\nshape = \"plate\"\nthickness = \"25 mm\"\ndiffusivity = ";
const std::string kCoe = kPlate + "\"Coe and Moreton 1969\"\n";

}  // namespace

TEST_CASE("the tempering of several records is carried along, and their hours are added beside it") {
  // One hour at 620, then two at 600. Carried along: the hour at 620 is worth t at 600 with
  // 20 + log10 t = 893.15/873.15 · 20, and two hours are added.
  const Verdicts verdicts = over({before(2, level(620, 1), kHold)}, level(600, 2), kHold);
  REQUIRE(verdicts.heat.tempering.size() == 1);
  const ChannelHeat& heat = verdicts.heat.tempering.front();
  const double carried = 873.15 * (20 + std::log10(std::pow(10.0, 893.15 / 873.15 * 20 - 20) + 2)) / 1000;
  CHECK(*heat.parameter == close_to(carried, 1e-6));
  CHECK(verdicts.heat.reference_c == 590.0);
  CHECK(*heat.hours == Approx(equivalent_hours(carried, 590, 20)).epsilon(1e-6));
  CHECK(*heat.referred_hours == Approx(hours_at_590(620, 1) + hours_at_590(600, 2)).epsilon(1e-6));
  CHECK(*heat.referred_parameter == close_to(863.15 * (20 + std::log10(*heat.referred_hours)) / 1000, 1e-9));
  REQUIRE(heat.records.size() == 2);
  CHECK(heat.records[0].cycle == 2);
  CHECK(*heat.records[0].parameter == close_to(893.15 * 20 / 1000, 1e-9));
  CHECK(heat.records[1].cycle == 3);
  CHECK(heat.in_all_records);
  CHECK(heat.not_known_s == close_to(0));
}

TEST_CASE("unknown and excluded time, and a record without the thermocouple, are told and not guessed") {
  MadeRecord hole = level(600, 2);
  hole.missing("TC1", 1801, 3599).exclusion("TC1", 5401, 6001);
  const Verdicts one = over({}, hole, kHold);
  CHECK(one.heat.tempering.front().not_known_s == close_to(1800 + 660));
  const Verdicts two = over({before(2, level(600, 1, "TC9"), kHold)}, level(600, 1), kHold);
  REQUIRE(two.heat.tempering.size() == 2);
  const ChannelHeat& here = two.heat.tempering[0];
  CHECK_FALSE(here.in_all_records);
  CHECK_FALSE(here.records[0].has_channel);
  CHECK(here.not_known_s == close_to(3600));
  const ChannelHeat& there = two.heat.tempering[1];
  CHECK(there.channel == "TC9");
  CHECK_FALSE(there.in_all_records);
  CHECK_FALSE(there.records[1].has_channel);
  CHECK(*there.parameter == close_to(17.463, 1e-9));
}

TEST_CASE("the constant and the reference temperature are those of the procedure") {
  const Verdicts verdicts =
      over({}, level(620, 2), "[evaluation]\ntempering_constant = 18\ntempering_reference = 620\n" + kHold);
  CHECK(verdicts.heat.constant == 18.0);
  CHECK(*verdicts.heat.tempering.front().parameter == close_to(893.15 * (18 + std::log10(2.0)) / 1000, 1e-9));
  CHECK(*verdicts.heat.tempering.front().hours == close_to(2, 1e-9));
  CHECK(*verdicts.tempering.front().hours_at_c == 620.0);
  // A limit on the parameter takes the same constant: 893.15 · (18 + log10 2) / 1000 = 16.346.
  const auto least = [](const std::string& limit) {
    const Evaluated evaluated(
        level(620, 2), "[evaluation]\ntempering_constant = 18\n" + kHold + "tempering_min = " + limit + "\n");
    return evaluated.told("stage-1.tempering-min") + " " + evaluated.text("stage-1.tempering-min");
  };
  CHECK_THAT(least("16.34"), Catch::StartsWith("16.346 met") && Catch::Contains("with C = 18."));
  CHECK_THAT(least("16.35"), Catch::StartsWith("16.346 not met"));
}

TEST_CASE("the sum over the cycles stands beside what the material was qualified for") {
  const std::string source = "[qualified]\nsource = \"PQR 12\"\n";
  const auto compared = [&](const std::string& keys) {
    return over({before(2, level(600, 1), kHold)}, level(600, 1), kHold, source + keys);
  };
  // Two hours at 600 in two records: 873.15 · (20 + log10 2) = 17.726.
  const Verdicts below = compared("parameter = 18.0\n");
  REQUIRE(below.heat.compared.size() == 1);
  CHECK(below.heat.compared[0].channel == "TC1");
  CHECK(below.heat.compared[0].below == close_to(18.0 - 17.725844, 1e-5));
  CHECK_FALSE(below.heat.compared[0].is_least);
  CHECK(below.findings.empty());
  const Verdicts above = compared("holds = [[\"600 C\", \"90 min\"]]\n");
  CHECK(above.heat.compared[0].below < 0.0);
  REQUIRE(above.findings.size() == 1);
  CHECK(above.findings[0].kind == Finding::Kind::note);
  CHECK(above.verdict == Verdict::met);
  const Record record = level(600, 1).record();
  CHECK_THAT(words(above.findings[0].what, {TemperatureUnit::celsius, record}),
             Catch::Contains("17.726") && Catch::Contains("17.617") && Catch::Contains("PQR 12"));
  // Two hours are exactly what two hours are.
  CHECK(compared("holds = [[\"600 C\", \"2 h\"]]\n").findings.empty());
}

TEST_CASE("several qualified holds are compared by the lower of both published sums") {
  const Verdicts verdicts = over(
      {}, level(600, 1), kHold,
      "[qualified]\nsource = \"mill certificate\"\nholds = [[\"730 C\", \"4 h\"], [\"675 C\", \"40 h\"], "
      "[\"710 C\", \"32 h\"]]\n");
  const QualifiedTempering& qualified = *verdicts.heat.qualified;
  // Published 21 333, method not stated: referred to 730 °C 21 335.1, carried along 21 323.8.
  CHECK(1000 * *qualified.referred == close_to(21333, 5));
  CHECK(qualified.referred_c == 730.0);
  CHECK(1000 * *qualified.carried == close_to(21323.8, 0.1));
  CHECK(qualified.parameter == *qualified.carried);
}

TEST_CASE("hydrogen left is that of the series over each thermocouple's curve, the most first") {
  MadeRecord made = level(350, 4);
  made.column("TC2", std::vector<double>(241, 250));
  const Verdicts verdicts = over({}, made, kHold, kCoe);
  REQUIRE(verdicts.heat.hydrogen.size() == 1);
  const WeldHydrogen& place = verdicts.heat.hydrogen.front();
  REQUIRE(place.channels.size() == 2);
  CHECK(place.size_mm == 25.0);
  // Not monotonic: the diffusivity is 6.2e-5 cm²/s at 250 °C and 5.1e-5 at 350.
  CHECK(place.channels[0].channel == "TC1");
  const double fourier = 5.1e-9 * 4 * 3600 / (0.0125 * 0.0125);
  const HydrogenLeft& chosen = place.channels[0].by_diffusivity.front();
  CHECK(chosen.fourier == Approx(fourier).epsilon(1e-9));
  CHECK(chosen.mean == Approx(hydrogen_left(HydrogenShape::plate, fourier).mean).epsilon(1e-9));
  // Beside it the other published one, the range of both, and a twentieth of the chosen one.
  REQUIRE(verdicts.heat.diffusivities.size() == 2);
  const double other = diffusivity_at(PublishedDiffusivity::eurofer_97, 350) * 4 * 3600 / (0.0125 * 0.0125);
  const double other_mean = hydrogen_left(HydrogenShape::plate, other).mean;
  CHECK(place.channels[0].by_diffusivity[1].mean == Approx(other_mean).epsilon(1e-9));
  CHECK(place.channels[0].least == Approx(std::min(chosen.mean, other_mean)).epsilon(1e-9));
  CHECK(place.channels[0].most == Approx(std::max(chosen.mean, other_mean)).epsilon(1e-9));
  CHECK(place.channels[0].mean_at_twentieth ==
        Approx(hydrogen_left(HydrogenShape::plate, fourier / 20).mean).epsilon(1e-9));
}

TEST_CASE("a curve hotter than a diffusivity holds keeps it out of the range, and says for how long") {
  const Verdicts verdicts = over({}, level(600, 1), kHold, kCoe);
  const ChannelHydrogen& channel = verdicts.heat.hydrogen.front().channels.front();
  CHECK(channel.by_diffusivity[0].above_s == close_to(0));
  CHECK(channel.by_diffusivity[1].above_s == close_to(3600));
  CHECK(channel.by_diffusivity[1].mean == 1.0);
  CHECK(channel.least == channel.most);
}

TEST_CASE("hydrogen is counted from the end of a period, and over the parts of one cycle") {
  const std::string period = "[[period]]\nname = \"welding\"\nfrom = 0\nto = 3600\n";
  const Verdicts after = over({before(3, level(350, 1), kHold)}, level(350, 4).period("welding", 0, 3600),
                              kHold, kCoe + "after = \"welding\"\n" + period);
  const WeldHydrogen& place = after.heat.hydrogen.front();
  CHECK(place.from_s == close_to(3600));
  CHECK(place.parts == 0);
  CHECK(place.channels[0].by_diffusivity[0].fourier ==
        Approx(5.1e-9 * 3 * 3600 / (0.0125 * 0.0125)).epsilon(1e-9));
  // Cycle 2 is another heat treatment; welding may have put hydrogen in between.
  const Verdicts parts =
      over({before(2, level(350, 1), kHold), before(3, level(350, 2), kHold)}, level(350, 4), kHold, kCoe);
  CHECK(parts.heat.hydrogen.front().parts == 1);
  CHECK(parts.heat.hydrogen.front().channels[0].by_diffusivity[0].fourier ==
        Approx(5.1e-9 * 6 * 3600 / (0.0125 * 0.0125)).epsilon(1e-9));
}

TEST_CASE("without a table in the job there is no hydrogen and no comparison") {
  const Verdicts verdicts = over({}, level(600, 1), kHold);
  CHECK_FALSE(verdicts.heat.shape);
  CHECK(verdicts.heat.hydrogen.empty());
  CHECK_FALSE(verdicts.heat.qualified);
  CHECK(verdicts.heat.compared.empty());
}
