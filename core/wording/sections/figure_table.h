// SPDX-License-Identifier: GPL-3.0-or-later
// A table of figures with what belongs beside it, and a formula with who published it.
#pragma once

#include <string>
#include <vector>

#include "core/wording/labelled_text.h"

namespace soakwright {

/// Every row has a text for each column.
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

/// A shorter time that is not known or not counted is not mentioned.
inline constexpr double kShortestNamed_s = 1e-3;

}  // namespace soakwright
