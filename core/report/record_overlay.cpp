// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/record_overlay.h"

#include <optional>

namespace soakwright {
namespace {

std::optional<double> required_hold_start(const Analysis& analysis) {
  if (!analysis.verdicts) return std::nullopt;
  for (const StageCourse& stage : analysis.verdicts->stages) {
    // Where the range was first reached: after a dip the clock may have started anew.
    if (stage.kind == "hold" && !stage.in_range.empty()) return stage.in_range.front().first;
  }
  return std::nullopt;
}

std::optional<double> recorded_hold_start(const Course& course) {
  const Phase* longest = nullptr;
  for (const Phase& phase : course.phases) {
    if (phase.kind != Phase::Kind::hold) continue;
    if (longest == nullptr || phase.end_s - phase.start_s > longest->end_s - longest->start_s)
      longest = &phase;
  }
  return longest != nullptr ? std::optional(longest->start_s) : std::nullopt;
}

}  // namespace

RecordOffset offset_onto(const Analysis& shown, const Analysis& other) {
  using Aligned = RecordOffset::Aligned;
  const auto ours = required_hold_start(shown);
  const auto theirs = required_hold_start(other);
  if (ours && theirs) return {*ours - *theirs, Aligned::required_hold};
  const auto our_phase = recorded_hold_start(*shown.course);
  const auto their_phase = recorded_hold_start(*other.course);
  if (our_phase && their_phase) return {*our_phase - *their_phase, Aligned::recorded_hold};
  if (shown.record->times_s.empty() || other.record->times_s.empty()) return {};
  return {shown.record->times_s.front() - other.record->times_s.front(), Aligned::record_start};
}

}  // namespace soakwright
