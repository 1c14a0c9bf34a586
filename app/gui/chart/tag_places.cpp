// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/tag_places.h"

#include <algorithm>
#include <cstddef>

namespace soakwright::gui {

std::vector<double> places_apart(std::vector<double> wanted, double spacing, double top, double bottom) {
  if (wanted.empty()) return wanted;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    const double least = i == 0 ? top + 0.5 * spacing : wanted[i - 1] + spacing;
    wanted[i] = std::max(wanted[i], least);
  }
  for (std::size_t i = wanted.size(); i-- > 0;) {
    const double most = i + 1 == wanted.size() ? bottom - 0.5 * spacing : wanted[i + 1] - spacing;
    wanted[i] = std::min(wanted[i], most);
  }
  return wanted;
}

}  // namespace soakwright::gui
