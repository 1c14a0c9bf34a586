// SPDX-License-Identifier: GPL-3.0-or-later
// [hydrogen] and [qualified] of a job: what the report says of hydrogen that is left and of tempering that
// the material was qualified for.
#pragma once

#include "core/problems/problem.h"
#include "core/procedure/job/job.h"
#include "core/procedure/procedure.h"
#include "core/procedure/toml/table_reader.h"

namespace soakwright {

void read_hydrogen(TableReader& in, HydrogenEntry& entry);
void read_qualified(TableReader& in, QualifiedEntry& entry);

// heat_table_checks.cpp: what is wrong between the keys of one table, and with the rest of the job.

/// The keys of [hydrogen] that were there, before they are one diffusivity.
struct HydrogenKeys {
  bool shape = false, thickness = false, diameter = false;
  bool diffusivity = false, published = false;  ///< `diffusivity` was read, and names a published one
  bool d0 = false, activation_energy = false;
  bool temperature_min = false, temperature_max = false, source = false;
};
void check_hydrogen_keys(TableReader& in, const HydrogenEntry& entry, const HydrogenKeys& keys);
void check_qualified_keys(TableReader& in, const QualifiedEntry& entry);
/// `after` must name a period of the job.
void check_hydrogen_period(const Job& job, TableReader& in);
/// A plate whose thickness neither [hydrogen] nor the weld nor the procedure gives.
Problems check_hydrogen_thickness(const Procedure& procedure, const Job* job);

/// A diffusivity by name or as a number with its unit.
std::optional<DiffusivityLaw> diffusivity_law(const FoundValue& found);
std::optional<double> plain_diffusivity(const FoundValue& found);
std::optional<double> activation_energy(const FoundValue& found);
/// "300 C"
std::optional<Temperature> temperature_point(const FoundValue& found);
/// [["620 C", "8 h"], …]
std::optional<std::vector<QualifiedHold>> qualified_holds(const FoundValue& found);
/// The Hollomon-Jaffe parameter in thousands.
std::optional<double> tempering_parameter(const FoundValue& found);
/// Where equivalent hours are given: hot enough for tempering to mean anything.
void check_tempering_reference(TableReader& in, const std::optional<Temperature>& reference);
/// The constant C of the parameter.
std::optional<double> tempering_constant(const FoundValue& found);

}  // namespace soakwright
