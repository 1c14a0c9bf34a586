// SPDX-License-Identifier: GPL-3.0-or-later
// What the heat did, in words: tempering, what the material was qualified for, hydrogen that is left; each
// with its formula, its source, and what it does not show.
#pragma once

#include <vector>

#include "core/wording/sections/hydrogen_words.h"
#include "core/wording/sections/tempering_words.h"
#include "core/wording/wording_context.h"

namespace soakwright {

/// Tables in the order of the report; empty without verdicts.
std::vector<FigureTable> heat_tables(const WordingContext& context);
/// One short line each, for the terminal: tempering of several records, the qualified one, hydrogen.
std::vector<LabelledText> heat_summary(const WordingContext& context);

}  // namespace soakwright
