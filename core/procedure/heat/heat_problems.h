// SPDX-License-Identifier: GPL-3.0-or-later
// What can be wrong with [hydrogen], [qualified] and the keys of tempering, in words.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/problems/problem_words.h"
#include "core/procedure/job/job.h"
#include "core/procedure/toml/table_reader.h"
#include "core/units/temperature.h"

namespace soakwright::heat_problems {

// [hydrogen]: the size of what holds hydrogen.
ProblemWords diameter_of_plate();
ProblemWords thickness_of_cylinder();
ProblemWords cylinder_without_diameter();
/// `weld` is nullopt for the only weld of a job.
Problem plate_without_thickness(const Job& job, const std::optional<std::string>& weld);

// [hydrogen]: the diffusivity.
ProblemWords two_diffusivities();
ProblemWords no_diffusivity();
ProblemWords half_a_formula();
/// `key` says more of a published diffusivity.
ProblemWords key_of_typed_diffusivity(const std::string& key);
ProblemWords diffusivity_without_range();
ProblemWords implausible_diffusivity(double m2_per_s, Temperature at);
ProblemWords not_a_diffusivity_or_its_name(const FoundValue& found);
ProblemWords not_a_diffusivity(const FoundValue& found);
ProblemWords not_an_activation_energy(const FoundValue& found);

// [hydrogen]: the period that it leaves in.
ProblemWords after_unknown_period(const std::string& period, const std::vector<std::string>& known);

// [qualified] and tempering.
ProblemWords parameter_and_holds();
ProblemWords neither_parameter_nor_holds();
ProblemWords not_qualified_holds(const FoundValue& found);
ProblemWords not_a_temperature(const FoundValue& found);
ProblemWords no_temperature_of_steel(const FoundValue& found);
ProblemWords parameter_not_in_thousands(const FoundValue& found);
ProblemWords tempering_reference_too_cold();
ProblemWords implausible_tempering_constant(const FoundValue& found);

}  // namespace soakwright::heat_problems
