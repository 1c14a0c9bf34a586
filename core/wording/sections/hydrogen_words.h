// SPDX-License-Identifier: GPL-3.0-or-later
// Hydrogen that is left after a bake-out, in words: an indication, with its formula and its diffusivities.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/evaluate/heat_facts.h"
#include "core/wording/printed_numbers.h"
#include "core/wording/sections/figure_table.h"

namespace soakwright {

PublishedFormula hydrogen_formula(HydrogenShape shape);

/// "Coe and Moreton 1969", "5.1e-5 cm²/s", "4.57e-3 cm²/s · exp(−22.3 kJ/mol / RT)".
std::string diffusivity_name(const Diffusivity& diffusivity);
/// Who published it, or the source that the job gives for one that was typed.
std::string diffusivity_source(const Diffusivity& diffusivity);
/// That hydrogen figures are an indication.
std::string hydrogen_caution();

/// A table per weld; `previous_records`: how many the job names.
std::vector<FigureTable> hydrogen_tables(const Heat& heat, std::size_t previous_records,
                                         const PrintedNumbers& say);
/// One line per weld, of its first thermocouple.
std::vector<LabelledText> hydrogen_summary(const Heat& heat);

}  // namespace soakwright
