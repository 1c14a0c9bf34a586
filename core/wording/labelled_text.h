// SPDX-License-Identifier: GPL-3.0-or-later
// A name and what is said under it: a line of the report's lists.
#pragma once

#include <string>

namespace soakwright {

struct LabelledText {
  std::string name;
  std::string text;
  bool operator==(const LabelledText&) const = default;
};

}  // namespace soakwright
