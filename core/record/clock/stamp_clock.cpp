// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/clock/stamp_clock.h"

#include <algorithm>

namespace soakwright {
namespace {

// Either way: differences of two times still fit 64 bits.
constexpr std::int64_t kFarthestNs = INT64_MAX / 2;

}  // namespace

WideNs twice_median(std::vector<std::int64_t> steps_ns) {
  if (steps_ns.empty()) return 0;
  const auto middle = steps_ns.begin() + static_cast<std::ptrdiff_t>(steps_ns.size() / 2);
  std::nth_element(steps_ns.begin(), middle, steps_ns.end());
  if (steps_ns.size() % 2 == 1) return WideNs{2} * *middle;
  return WideNs{*middle} + *std::max_element(steps_ns.begin(), middle);
}

const StampSteps& StampClock::steps() {
  if (steps_) return *steps_;
  StampSteps& seen = steps_.emplace();
  const std::size_t count = rows() - 1;
  // Most logs have one step throughout: one look at all of them then is enough.
  const std::int64_t guess = step(count / 2);
  std::size_t forward = 0;
  std::size_t below = 0;
  std::size_t equal = 0;
  for (std::size_t row = 0; row < count; ++row) {
    const std::int64_t here = step(row);
    forward += here > 0 ? 1U : 0U;
    below += here > 0 && here < guess ? 1U : 0U;
    equal += here == guess ? 1U : 0U;
    seen.shortest = std::min(seen.shortest, here);
    seen.longest = std::max(seen.longest, here);
  }
  if (forward == 0) return seen;
  if (guess > 0 && below <= (forward - 1) / 2 && forward / 2 < below + equal) {
    seen.twice_median = WideNs{2} * guess;
    return seen;
  }
  std::vector<std::int64_t> those_forward;
  those_forward.reserve(forward);
  for (std::size_t row = 0; row < count; ++row)
    if (step(row) > 0) those_forward.push_back(step(row));
  seen.twice_median = soakwright::twice_median(std::move(those_forward));
  return seen;
}

std::int64_t StampClock::longest_usual_step() {
  const WideNs longest = kIntervalsOfAGap * twice_interval() / 2;
  return longest < INT64_MAX ? static_cast<std::int64_t>(longest) : INT64_MAX;
}

void StampClock::set(std::size_t row, WideNs time) {
  const bool near = time <= kFarthestNs && time >= -kFarthestNs;
  too_far_ = too_far_ || !near;
  if (!near) return;
  if (moved_.empty()) {
    moved_ = table_.stamps_ns;
    time_ = moved_.data();
  }
  moved_[row] = static_cast<std::int64_t>(time);
  steps_.reset();
}

void StampClock::move(const Moves& moves) {
  WideNs by = 0;
  for (std::size_t i = 0; i < moves.size() && !too_far_; ++i) {
    by += moves[i].second;
    const std::size_t end = i + 1 < moves.size() ? moves[i + 1].first : rows();
    for (std::size_t row = moves[i].first; row < end; ++row) set(row, time(row) + by);
  }
  if (too_far_) return;
  shift_from_.insert(shift_from_.end(), moves.begin(), moves.end());
}

void StampClock::unfold(const Moves& midnights) {
  if (midnights.empty()) return;
  move(midnights);
  shift_from_.assign(1, {0, 0});
  unfolded_ = moved_;
}

std::vector<std::pair<std::size_t, std::int64_t>> StampClock::shifts() const {
  Moves moves = shift_from_;
  std::stable_sort(moves.begin(), moves.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<std::pair<std::size_t, std::int64_t>> shifts;
  WideNs shift = 0;
  for (const auto& [row, by] : moves) {
    shift += by;
    if (!shifts.empty() && shifts.back().first == row) shifts.pop_back();
    shifts.emplace_back(row, static_cast<std::int64_t>(shift));
  }
  return shifts;
}

}  // namespace soakwright
