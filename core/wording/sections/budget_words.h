// SPDX-License-Identifier: GPL-3.0-or-later
// The words of an uncertainty budget.
#pragma once

#include <optional>
#include <string>

#include "core/uncertainty/tolerance_table.h"
#include "core/wording/printed_numbers.h"

namespace soakwright::budget_words {

/// "thermocouple", "extension cable".
std::string name(BudgetSource::Kind kind);
/// "type K, IEC 60584-1 class 1: 1.5 °C or 0.4 %"; "0.1 °C, of the log".
std::string source(const BudgetSource& source);
/// A contribution in the unit of the report; "not known" where the table says nothing.
std::string contribution(const std::optional<double>& kelvin, const PrintedNumbers& say);
/// What U is of a rate: "0.46 % of the rate".
std::string of_rate(double share);

}  // namespace soakwright::budget_words
