// SPDX-License-Identifier: GPL-3.0-or-later
// What a visible signature says, and how large it is.
#pragma once

#include <string>
#include <vector>

namespace soakwright {

struct SignatureWords {
  std::vector<std::string> lines;  ///< UTF-8, the first in bold
  double width_pt = 0.0;
  double height_pt = 0.0;
};

}  // namespace soakwright
