// SPDX-License-Identifier: GPL-3.0-or-later
// Numbers from text and to text, the same on every machine whatever its locale.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace soakwright {

/// A decimal number with a point: sign, digits, exponent. Nothing for anything else, for text left over, and
/// for numbers that are not finite.
std::optional<double> parse_number(std::string_view text);

/// The shortest text that reads back to the same double: what a person typed comes back as typed.
std::string number_text(double value);

/// `value` with `decimals` places, for people; a zero has no sign.
std::string fixed_text(double value, int decimals);

/// A number and the word behind it: `38 mm`, `-1.5h`, `15 min`. Spaces around and between do not count;
/// either part may be missing only where the answer is nothing.
struct NumberAndUnit {
  double number = 0.0;
  std::string_view unit;  ///< into the text given, without spaces around it
};
std::optional<NumberAndUnit> split_number_and_unit(std::string_view text);

/// `text` without spaces and tabs at its ends.
std::string_view trimmed(std::string_view text);

}  // namespace soakwright
