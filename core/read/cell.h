// SPDX-License-Identifier: GPL-3.0-or-later
// One cell of a log, read with care: number, nothing, or text. This is the reading that everything faster
// must agree with.
//
// A number is kept as the decimal that stands there: mantissa / 10^places. Digit grouping is recognised but
// is no number, because 1.234 and 1,234 would then mean different things in different files.
#pragma once

#include <cstdint>
#include <string_view>

namespace soakwright {

struct Cell {
  enum class Kind { empty, number, grouped, text };
  Kind kind = Kind::empty;
  bool exact = false;         ///< mantissa and places say it all
  std::int64_t mantissa = 0;  ///< only where exact
  int places = 0;             ///< decimal places as written, exponent included; never negative
  double value = 0.0;         ///< the nearest double
};

/// The cell without spaces around it: spaces, tabs, no-break spaces in UTF-8 or Windows-1252.
std::string_view without_spaces(std::string_view text);
/// `decimal` is '.' or ','. Quotes must be off already.
Cell parse_cell(std::string_view text, char decimal);

/// 10^places for 0 <= places <= 18.
std::int64_t power_of_ten(int places);

}  // namespace soakwright
