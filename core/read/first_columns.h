// SPDX-License-Identifier: GPL-3.0-or-later
// The columns of a log that could not be read, as far as its first lines show them: what can still be offered
// where somebody has to say which of them is the time.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace soakwright {

/// As many columns as the widest of `lines` has that can belong to the table; each by its name without unit,
/// empty where no line names it. `lines` are the file's first, UTF-8, without their ends.
///
/// `delimiter` (' ': runs of spaces) and `header_line` (from 1; 0: there is none) are what a person gave.
/// Where no rows are found, the delimiter that parts the lines into most cells is taken.
std::vector<std::string> first_columns(const std::vector<std::string>& lines, std::optional<char> delimiter,
                                       std::optional<std::size_t> header_line);

}  // namespace soakwright
