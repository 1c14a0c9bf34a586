// SPDX-License-Identifier: GPL-3.0-or-later
// How far a batch is, on standard error: one line that is written over on a terminal, a plain line now and
// then elsewhere.
#pragma once

#include <chrono>
#include <string>

#include "core/batch.h"

namespace soakwright::cli {

/// "412 of 1000 logs, 38 logs/s, 16 s left; 2 not met, 1 inconclusive, 1 not evaluated". Rate and time left
/// count what this run did itself; `elapsed_s` is its time so far.
std::string progress_text(const BatchProgress& progress, double elapsed_s);

/// What is said of a batch that was stopped by a signal.
std::string stopped_text(const BatchProgress& progress, const BatchRequest& request);

class BatchProgressLine {
 public:
  BatchProgressLine();
  /// Not more often than can be read.
  void show(const BatchProgress& progress);
  /// A line of its own above the one that is written over.
  void say_between(const std::string& text);
  void clear();
  /// The last state, as a line that stays.
  void end(const BatchProgress& progress);

 private:
  using Clock = std::chrono::steady_clock;
  [[nodiscard]] double elapsed_s() const;

  bool terminal_;
  bool shown_ = false;
  Clock::time_point begin_, last_;
};

}  // namespace soakwright::cli
