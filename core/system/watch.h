// SPDX-License-Identifier: GPL-3.0-or-later
// How the caller of long work follows it and stops it.
#pragma once

#include <atomic>
#include <functional>

namespace soakwright {

/// `progress` gets shares from 0 to 1 on the thread that asked for the work. Once `cancelled` is true the
/// work stops at its next step and gives neither a value nor a problem (an empty list of problems).
struct Watch {
  std::function<void(double)> progress;
  const std::atomic<bool>* cancelled = nullptr;

  [[nodiscard]] bool stopped() const {
    return cancelled != nullptr && cancelled->load(std::memory_order_relaxed);
  }
  void report(double share) const {
    if (progress) progress(share);
  }
};

}  // namespace soakwright
