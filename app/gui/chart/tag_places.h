// SPDX-License-Identifier: GPL-3.0-or-later
// Where labels stand that must not cover each other.
#pragma once

#include <vector>

namespace soakwright::gui {

/// Moves what is `wanted`, ascending, apart until each has `spacing`, between top and bottom, its order kept.
/// There must be room for all.
std::vector<double> places_apart(std::vector<double> wanted, double spacing, double top, double bottom);

}  // namespace soakwright::gui
