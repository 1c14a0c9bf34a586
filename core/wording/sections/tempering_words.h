// SPDX-License-Identifier: GPL-3.0-or-later
// Tempering in words: of the whole record, of several, and beside what the material was qualified for.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/evaluate/heat_facts.h"
#include "core/wording/printed_numbers.h"
#include "core/wording/sections/figure_table.h"

namespace soakwright {

PublishedFormula tempering_formula(double constant);
/// How a varying temperature is summed, as the result names it.
inline constexpr std::string_view kTemperingMethod = "carried along";

/// A table per weld, and one of what the material was qualified for; empty where no temperature is known.
std::vector<FigureTable> tempering_tables(const Heat& heat, const PrintedNumbers& say);
/// One line each: tempering of several records, and the qualified one.
std::vector<LabelledText> tempering_summary(const Heat& heat);

}  // namespace soakwright
