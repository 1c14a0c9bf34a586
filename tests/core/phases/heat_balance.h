// SPDX-License-Identifier: GPL-3.0-or-later
// The work and its controller.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "tests/core/phases/dice.h"
#include "tests/core/phases/run.h"

namespace soakwright::made {

/// The noise-free temperature of the controlled work at every row: dT/dt = q - (T - ambient)/loss_s, the heat
/// flow q follows the controller's wish with a lag; the controller is proportional and integral.
class HeatBalance {
 public:
  HeatBalance(Dice& dice, const std::vector<Part>& parts, double ambient_c, double duration_s, bool natural)
      : parts_(parts), ambient_c_(ambient_c), t_c_(parts.front().from_c) {
    lag_s_ = std::clamp(duration_s / 600.0, 2.0, 120.0) * dice.between(0.3, 1.0);
    const double damping = dice.between(0.45, 1.2);
    gain_ = 1.0 / (4.0 * damping * damping * lag_s_);
    reset_s_ = lag_s_ * dice.between(8.0, 20.0);
    loss_s_ = duration_s * dice.between(0.1, 0.3);
    double pace = 0.0;
    double top = 0.0;
    for (const Part& part : parts) {
      pace = std::max(pace, std::abs(part.to_c - part.from_c) / part.seconds);
      top = std::max(top, part.to_c);
    }
    most_flow_ = 2.0 * pace + 1.3 * (top - ambient_c) / loss_s_;
    fan_ = natural ? 0.0 : 6.0 * pace / (top - ambient_c);  // blown cool: in proportion to what is left
    flow_ = (t_c_ - ambient_c_) / loss_s_;
    wish_ = flow_;
  }
  /// Seconds without power after which the work has lost `depth_k` at `celsius`.
  [[nodiscard]] double time_to_lose(double depth_k, double celsius) const {
    return lag_s_ + depth_k * loss_s_ / (celsius - ambient_c_);
  }
  void cut_power(double from_s, double to_s) {
    cut_from_s_ = from_s;
    cut_to_s_ = to_s;
  }
  [[nodiscard]] double lag_s() const { return lag_s_; }
  [[nodiscard]] double asked_c(double at_s) const {
    for (const Part& part : parts_) {
      if (at_s <= part.seconds) return part.from_c + (part.to_c - part.from_c) * at_s / part.seconds;
      at_s -= part.seconds;
    }
    return parts_.back().to_c;
  }
  double go_to(double at_s) {
    const auto steps = static_cast<std::size_t>(std::ceil((at_s - now_s_) / (0.2 * lag_s_)));
    const double dt = steps > 0 ? (at_s - now_s_) / static_cast<double>(steps) : 0.0;
    for (std::size_t i = 0; i < steps; ++i) {
      now_s_ += dt;
      const double error = asked_c(now_s_) - t_c_;
      const bool cut = now_s_ >= cut_from_s_ && now_s_ <= cut_to_s_;
      const double wanted = gain_ * error + wish_;
      const double given =
          cut ? 0.0 : std::clamp(wanted, -fan_ * std::max(t_c_ - ambient_c_, 0.0), most_flow_);
      if (!cut && given == wanted) wish_ += gain_ * error * dt / reset_s_;  // no wind-up at the stops
      flow_ += (given - flow_) * (1.0 - std::exp(-dt / lag_s_));
      t_c_ += (flow_ - (t_c_ - ambient_c_) / loss_s_) * dt;
    }
    return t_c_;
  }

 private:
  const std::vector<Part>& parts_;
  double ambient_c_, t_c_, lag_s_ = 0.0, gain_ = 0.0, reset_s_ = 0.0, loss_s_ = 0.0;
  double most_flow_ = 0.0, fan_ = 0.0, flow_ = 0.0, wish_ = 0.0, now_s_ = 0.0;
  double cut_from_s_ = -1.0, cut_to_s_ = -2.0;
};

}  // namespace soakwright::made
