// SPDX-License-Identifier: GPL-3.0-or-later
// Progress of work that says it far more often than anybody can see.
#pragma once

#include <functional>
#include <utility>

namespace soakwright::gui {

/// Passes on each share that is a step beyond the last one.
inline std::function<void(double)> in_steps(std::function<void(double)> say) {
  constexpr double kStep = 0.01;
  return [say = std::move(say), said = 0.0](double share) mutable {
    if (share - said < kStep) return;
    said = share;
    say(share);
  };
}

}  // namespace soakwright::gui
