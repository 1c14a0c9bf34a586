// SPDX-License-Identifier: GPL-3.0-or-later
// Text that came from somebody else's file, made safe for a terminal, a message, a page and a window.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace soakwright {

/// U+FFFD, in place of what is no UTF-8.
inline constexpr std::string_view kReplacementCharacter = "\xEF\xBF\xBD";

/// `text` as valid UTF-8 on one line, with nothing in it that steers what shows it: line ends and tabs become
/// spaces; other control characters (C0, DEL, C1), marks and overrides of the writing direction (U+200E,
/// U+200F, U+061C, U+202A to U+202E, U+2066 to U+2069) and bytes that are no UTF-8 become U+FFFD.
/// (Unicode 15.0, UAX #9; ECMA-48 for the control characters.)
std::string printable(std::string_view text);

/// Bytes of the code point that `text` starts with; 0 where it starts with none, or with what is no UTF-8
/// (RFC 3629: no overlong forms, no surrogates, nothing above U+10FFFF).
std::size_t utf8_length(std::string_view text);

/// Whether a code point steers what shows it: printable() replaces it.
bool steers_display(char32_t code_point);

/// The code point of the `length` bytes that `text` starts with, as utf8_length() gave it.
char32_t utf8_code_point(std::string_view text, std::size_t length);

}  // namespace soakwright
