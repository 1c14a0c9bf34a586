// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/heat/heat_problems.h"

#include <utility>

#include <fmt/format.h>

#include "core/procedure/toml/toml_problems.h"
#include "core/units/diffusivity_text.h"
#include "core/units/printed_quantity.h"

namespace soakwright::heat_problems {
namespace {

constexpr const char* kHowToGiveDiffusivity =
    R"(write "Coe and Moreton 1969", "EUROFER'97", or a number with its unit: "5.1e-5 cm2/s")";
constexpr const char* kHowToGiveQualified = R"(give `parameter = 18.6`, or `holds = [["620 C", "8 h"]]`)";

/// What is written, and what would help.
ProblemWords written(const FoundValue& found, std::string help) {
  return {fmt::format("`{}` is {}", found.name, described(found.value)), std::move(help)};
}

}  // namespace

ProblemWords diameter_of_plate() {
  return {"`diameter` is a cylinder's, and `shape` is \"plate\"",
          "give `thickness`, or write `shape = \"cylinder\"`"};
}

ProblemWords thickness_of_cylinder() {
  return {"`thickness` is a plate's, and `shape` is \"cylinder\"",
          "give `diameter`, or write `shape = \"plate\"`"};
}

ProblemWords cylinder_without_diameter() {
  return {"[hydrogen] has a cylinder without its `diameter`", R"(add `diameter = "80 mm"`)"};
}

Problem plate_without_thickness(const Job& job, const std::optional<std::string>& weld) {
  return {ProblemKind::bad_input, job.file, job.hydrogen ? job.hydrogen->line : 0,
          weld ? fmt::format("[hydrogen] has no `thickness`, and none is given for weld {}", *weld)
               : "[hydrogen] has no `thickness`, and none is given",
          R"(add `thickness = "25 mm"` to [hydrogen], the weld or the procedure)"};
}

ProblemWords two_diffusivities() {
  return {"[hydrogen] gives a diffusivity twice, by `diffusivity` and by a formula",
          "give `diffusivity`, or `d0` and `activation_energy`"};
}

ProblemWords no_diffusivity() { return {"[hydrogen] has no `diffusivity`", kHowToGiveDiffusivity}; }

ProblemWords half_a_formula() {
  return {"`d0` and `activation_energy` make a diffusivity together, and one is missing",
          R"(give both: `d0 = "4.57e-7 m2/s"`, `activation_energy = "22.3 kJ/mol"`)"};
}

ProblemWords key_of_typed_diffusivity(const std::string& key) {
  return {fmt::format("`{}` belongs to a diffusivity that is typed", key),
          "leave it out: a published diffusivity has its own range and source"};
}

ProblemWords diffusivity_without_range() {
  return {"a diffusivity that is typed needs the temperatures between which it holds",
          R"(add `temperature_min = "300 C"` and `temperature_max = "370 C"`)"};
}

ProblemWords implausible_diffusivity(double m2_per_s, Temperature at) {
  return {fmt::format("the diffusivity comes to {} at {} °C, which is no diffusivity of hydrogen in steel",
                      diffusivity_text(m2_per_s), short_text(at.celsius(), 1)),
          "look at the number and its unit: published ones are between 1e-8 and 1e-4 cm2/s"};
}

ProblemWords not_a_diffusivity_or_its_name(const FoundValue& found) {
  return written(found, kHowToGiveDiffusivity);
}

ProblemWords not_a_diffusivity(const FoundValue& found) {
  return written(found, R"(write a diffusivity with its unit: "4.57e-7 m2/s")");
}

ProblemWords not_an_activation_energy(const FoundValue& found) {
  return written(found, R"(write an energy with its unit: "22.3 kJ/mol")");
}

ProblemWords after_unknown_period(const std::string& period, const std::vector<std::string>& known) {
  return {fmt::format("`after` names \"{}\", and the job has no such period", shown(period)),
          known.empty() ? "add a [[period]] with that `name`" : suggestion(period, known)};
}

ProblemWords parameter_and_holds() {
  return {"[qualified] gives both `parameter` and `holds`", kHowToGiveQualified};
}

ProblemWords neither_parameter_nor_holds() {
  return {"[qualified] says nothing that can be compared", kHowToGiveQualified};
}

ProblemWords not_qualified_holds(const FoundValue& found) {
  return written(found, R"(write holds as temperature and time: [["620 C", "8 h"], ["600 C", "2 h"]])");
}

ProblemWords not_a_temperature(const FoundValue& found) {
  return written(found, R"(write a temperature with its unit: "300 C", "600 F")");
}

ProblemWords no_temperature_of_steel(const FoundValue& found) {
  return written(found, "give a temperature that steel can have");
}

ProblemWords parameter_not_in_thousands(const FoundValue& found) {
  return written(found, "give the parameter divided by 1000: 17.9, not 17900");
}

ProblemWords tempering_reference_too_cold() {
  return {"`tempering_reference` is a temperature at which no steel tempers",
          "give a holding temperature, in the file's unit"};
}

ProblemWords implausible_tempering_constant(const FoundValue& found) {
  return written(found, "give the constant C of the formula, from 10 to 30; 20 for C-Mn and Cr-Mo steels");
}

}  // namespace soakwright::heat_problems
