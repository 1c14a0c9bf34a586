// SPDX-License-Identifier: GPL-3.0-or-later
// Statements made into text, in the unit and with the digits of the report.
#pragma once

#include <string>
#include <string_view>

#include "core/units/statement.h"
#include "core/wording/printed_numbers.h"

namespace soakwright {

/// One sentence, with its capital letter and its full stop.
std::string words(const Statement& statement, const PrintedNumbers& say);
/// One after the other.
std::string words(const Statements& statements, const PrintedNumbers& say);

/// The pattern of a sentence: `{0}` is its first argument, `{0:reading|readings}` a count with its noun;
/// a part in [brackets] with an argument is said only where that is given.
std::string_view pattern_of(Sentence sentence);
/// How many arguments the pattern takes.
std::size_t arguments_of(Sentence sentence);

}  // namespace soakwright
