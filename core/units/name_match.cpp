// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/name_match.h"

#include "core/units/number_text.h"

namespace soakwright {

std::string name_to_match(std::string_view name) {
  std::string out{trimmed(name)};
  for (char& letter : out)
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  return out;
}

}  // namespace soakwright
