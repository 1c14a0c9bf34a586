// SPDX-License-Identifier: GPL-3.0-or-later
// What the heat did, in words: tempering, what the material was qualified for, hydrogen that is left; each
// with its formula, its source, and what it does not show.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/wording/labelled_text.h"
#include "core/wording/wording_context.h"

namespace soakwright {

/// A table of figures with what belongs beside it. Every row has a text for each column.
struct FigureTable {
  std::string title;
  std::vector<LabelledText> facts;
  std::vector<std::string> columns;  ///< the first names the row
  std::vector<std::vector<std::string>> rows;
  std::vector<std::string> notes;
};

/// A formula or a series with who published it.
struct PublishedFormula {
  std::string formula, source, flag;  ///< flag: "seen" in print, as a procedure has it
};
PublishedFormula tempering_formula(double constant);
/// How a varying temperature is summed, as the result names it.
inline constexpr std::string_view kTemperingMethod = "carried along";
PublishedFormula hydrogen_formula(HydrogenShape shape);

/// "Coe and Moreton 1969", "5.1e-5 cm²/s", "4.57e-3 cm²/s · exp(−22.3 kJ/mol / RT)".
std::string diffusivity_name(const Diffusivity& diffusivity);
/// Who published it, or the source that the job gives for one that was typed.
std::string diffusivity_source(const Diffusivity& diffusivity);
/// That hydrogen figures are an indication.
std::string hydrogen_caution();

/// Tables in the order of the report; empty without verdicts.
std::vector<FigureTable> heat_tables(const WordingContext& context);
/// One short line each, for the terminal: tempering of several records, the qualified one, hydrogen.
std::vector<LabelledText> heat_summary(const WordingContext& context);

}  // namespace soakwright
