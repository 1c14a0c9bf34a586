// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/batch/path_text.h"

#include <cstddef>

#include "core/units/printable_text.h"

namespace soakwright {

std::string path_text(std::string_view path) {
  constexpr std::string_view digits = "0123456789ABCDEF";
  std::string out;
  while (!path.empty()) {
    const std::size_t length = utf8_length(path);
    const std::string_view sequence = path.substr(0, length == 0 ? 1 : length);
    path.remove_prefix(sequence.size());
    // printable() makes spaces of line ends and tabs: they are told apart here as well.
    const bool plain = length != 0 && sequence != "\\" &&
                       static_cast<unsigned char>(sequence.front()) >= 0x20U &&
                       !steers_display(utf8_code_point(sequence, length));
    if (plain) {
      out += sequence;
      continue;
    }
    for (const char byte : sequence) {
      const auto code = static_cast<unsigned char>(byte);
      out += "\\x";
      out += digits[code >> 4U];
      out += digits[code & 0x0FU];
    }
  }
  return out;
}

}  // namespace soakwright
