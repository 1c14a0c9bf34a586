// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/toml/toml_text.h"

#include <fmt/format.h>

#include "core/units/number_text.h"

namespace soakwright {

std::string toml_text(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\')
      out.append(1, '\\').append(1, c);
    else if (static_cast<unsigned char>(c) < 0x20U || c == 0x7F)
      out += fmt::format("\\u{:04X}", static_cast<unsigned>(static_cast<unsigned char>(c)));
    else
      out += c;
  }
  return out + "\"";
}

std::string toml_number(double value) {
  std::string text = number_text(value);
  if (text.find_first_of(".eE") == std::string::npos) text += ".0";
  return text;
}

}  // namespace soakwright
