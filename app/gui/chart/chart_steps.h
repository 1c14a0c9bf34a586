// SPDX-License-Identifier: GPL-3.0-or-later
// How far one step of a key or of the wheel goes, and how far a view may.
#pragma once

#include <algorithm>

namespace soakwright::gui {

inline constexpr double kStep = 1.25;      ///< one notch of the wheel, one key
inline constexpr double kPanShare = 0.15;  ///< of what is in view, one key
inline constexpr double kSmallestSpan_k = 0.5;

/// Keeps a range within the whole, shrinking it only where it is wider.
inline void keep_within(double& lower, double& upper, double least, double most) {
  const double size = std::min(upper - lower, most - least);
  lower = std::clamp(lower, least, most - size);
  upper = lower + size;
}

}  // namespace soakwright::gui
