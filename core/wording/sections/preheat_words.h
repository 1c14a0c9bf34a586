// SPDX-License-Identifier: GPL-3.0-or-later
// What is published about preheat and about the bands of a local heat treatment, beside what the job and the
// procedure say: lines for the report. They decide nothing.
#pragma once

#include <string>
#include <vector>

#include "core/evaluate/band_positions.h"
#include "core/procedure/heat/preheat.h"
#include "core/wording/labelled_text.h"
#include "core/wording/printed_numbers.h"

namespace soakwright {

/// "CE(IIW) = C + Mn/6 + …"
std::string carbon_formula_text(CarbonFormula formula);
/// Empty where the job says nothing about preheat. With several welds each line names its weld.
std::vector<LabelledText> preheat_facts(const std::vector<WeldPreheat>& welds, const PrintedNumbers& say);
/// Empty where the job has no band.
std::vector<LabelledText> band_facts(const std::vector<Bands>& all, const Record& record);

/// Where the bands' formula is from.
Provenance band_provenance();

}  // namespace soakwright
