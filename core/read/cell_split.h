// SPDX-License-Identifier: GPL-3.0-or-later
// A line cut into cells: delimiter, runs of spaces, quotes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace soakwright {

/// Cuts `line` (without its end) at `delimiter`; ' ' stands for runs of spaces and tabs. Cells are pieces of
/// `line` without the quotes around them; a quote never closed ends with the line. `cells` is used again.
void split_cells(std::string_view line, char delimiter, std::vector<std::string_view>& cells);

/// Doubled quotes inside a quoted cell made single.
std::string unquoted(std::string_view cell);

}  // namespace soakwright
