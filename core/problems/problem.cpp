// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/problems/problem.h"

#include "core/units/printable_text.h"

namespace soakwright {

std::string Problem::text() const {
  std::string out;
  if (!file.empty()) {
    out += printable(file);
    out += ':';
    if (line != 0) {
      out += std::to_string(line);
      out += ':';
    }
    out += ' ';
  }
  out += printable(what);
  if (!help.empty()) {
    out += "; ";
    out += printable(help);
  }
  return out;
}

}  // namespace soakwright
