// SPDX-License-Identifier: GPL-3.0-or-later
// Tables on a narrow terminal: how wide each column may be, and a cell's text in lines of that width.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace soakwright::cli {

/// Takes from the widest columns until all fit into `room`, `between` places apart: first down to their
/// longest words, then into these. No column becomes narrower than 8: a table of many columns may stay wider
/// than the room. Columns of width 0 are not there.
void fit_widths(std::vector<std::size_t>& widths, const std::vector<std::size_t>& longest_words,
                std::size_t room, std::size_t between);

/// Places of the longest word, with the spaces that the text begins with.
std::size_t longest_word(std::string_view text);

/// The text in lines of at most `width` places, parted at spaces; a longer word is parted anywhere. At least
/// one line.
std::vector<std::string> wrapped_cell(std::string_view text, std::size_t width);

}  // namespace soakwright::cli
