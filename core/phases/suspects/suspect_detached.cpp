// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/suspect_detached.h"

#include <algorithm>
#include <cmath>

#include "core/phases/robust.h"

namespace soakwright {

namespace {

// A fall stays for ten minutes at least, a jump for twenty: a weld run's heat has gone by then. Shorter
// records in proportion, never less than a few readings.
constexpr double kFallStaysS = 600.0;
constexpr double kFallStaysShare = 0.015;
constexpr double kFallStaysIntervals = 5.0;
constexpr double kJumpStaysTimes = 2.0;
// What is left of its highest point then.
constexpr double kStepLeftShare = 0.5;
constexpr std::size_t kFewestLeft = 3;  // cells to tell by, or one less at the record's end
// After it the channel stands apart from the others by at least this share of it: a step towards them is a
// return.
constexpr double kApartShare = 0.5;
// It is back where it differs by less than this share of the step from what it was.
constexpr double kReturnShare = 0.35;
// Everything meets at ambient: only above this share of the range can it be back.
constexpr double kHotShare = 0.3;

// A jump is not one weld run after the other: but for a few cells it stays, half as long again, and does not
// fade.
constexpr double kJumpLooksTimes = 1.5;
constexpr double kEarlyShare = 0.15;
constexpr double kFadedShare = 0.7;
// A fall is not the fading of a weld run's heat: before it the channel was hardly ever where it is after it.
constexpr double kBeenThereShare = 0.3;
constexpr double kWasThereShare = 0.08;  // of all times at which the others were as hot
constexpr double kSameLevelK = 15.0;
constexpr double kSameLevelShare = 0.05;

double stays_s(const ExaminedChannel& examined, bool fall) {
  const double seconds = std::max(std::min(kFallStaysS, kFallStaysShare * examined.sampled->duration_s()),
                                  kFallStaysIntervals * examined.record->interval_s);
  return fall ? seconds : kJumpStaysTimes * seconds;
}

/// Whether the channel stays up after a jump, and does not come down between one and the next.
bool stays_up(const ExaminedChannel& examined, const SuddenStep& step, double seconds) {
  std::vector<double> away;
  const std::size_t last =
      std::min(examined.cell_at(step.onset_s + kJumpLooksTimes * seconds), examined.cells());
  for (std::size_t k = step.after; k < last; ++k)
    if (examined.comparable(k)) away.push_back(examined.apart_k(k) - step.before_k);
  if (away.size() < kFewestLeft) return true;  // nothing that says otherwise
  std::sort(away.begin(), away.end());
  const auto at = [&](double share) {
    return away[static_cast<std::size_t>(share * static_cast<double>(away.size() - 1))];
  };
  return at(kEarlyShare) >= kStepLeftShare * step.peak_k &&
         at(kEarlyShare) >= kFadedShare * at(1.0 - kEarlyShare);
}

/// Whether the channel was often as low before a fall as after it.
bool has_been_there(const ExaminedChannel& examined, const SuddenStep& step, double seconds) {
  std::size_t all = 0;
  std::size_t low = 0;
  for (std::size_t k = examined.cell_at(step.onset_s - kJumpStaysTimes * seconds); k <= step.before; ++k) {
    if (!examined.comparable(k)) continue;
    ++all;
    if (examined.apart_k(k) - step.before_k < 0.5 * step.jump_k) ++low;
  }
  return static_cast<double>(low) > kBeenThereShare * static_cast<double>(all);
}

/// Whether the channel was where it is after the fall at any earlier time when the others were where they are
/// now: it is back after the heat of weld runs. What is before `since_s` has been told already.
bool was_there_before(const ExaminedChannel& examined, const SuddenStep& step, double since_s) {
  const double now_c = examined.others_c[step.before];
  const double near_k = std::max(kSameLevelK, kSameLevelShare * examined.course->range_k);
  std::size_t all = 0;
  std::size_t low = 0;
  for (std::size_t k = 0; k <= step.before; ++k) {
    if (!examined.comparable(k) || examined.time_s(k) <= since_s) continue;
    if (std::abs(examined.others_c[k] - now_c) > near_k) continue;
    ++all;
    if (examined.apart_k(k) - step.before_k < 0.5 * step.jump_k) ++low;
  }
  return low >= kFewestLeft && static_cast<double>(low) > kWasThereShare * static_cast<double>(all);
}

bool stays(const ExaminedChannel& examined, const SuddenStep& step) {
  const double seconds = stays_s(examined, step.jump_k < 0.0);
  if (std::abs(step.jump_k) < least_jump_k(examined)) return false;
  if (step.jump_k > 0.0 ? !stays_up(examined, step, seconds) : has_been_there(examined, step, seconds))
    return false;
  const double until_s = std::min(step.onset_s + seconds, examined.sampled->end_s);
  const std::size_t first = examined.cell_at(0.5 * (step.onset_s + until_s));
  std::size_t last = examined.cell_at(until_s);
  if (last < examined.cells()) ++last;
  const std::size_t from = std::max(first, step.after);
  last = std::max(last, from + kFewestLeft);
  std::size_t count = 0;
  double left = 0.0;
  for (; count < kFewestLeft - 1 && last < examined.cells() + kFewestLeft; ++last)  // a gap may lie there
    left = examined.median_apart(from, last, count) - step.before_k;
  const double apart = left + step.before_k;
  return count >= kFewestLeft - 1 && left * step.jump_k > 0.0 &&
         std::abs(left) >= kStepLeftShare * std::max(std::abs(step.peak_k), least_jump_k(examined)) &&
         apart * step.jump_k > 0.0 && std::abs(apart) >= kApartShare * std::abs(step.jump_k);
}

/// Where the channel is back at its old distance from the others; the record's end where it never is.
double back_s(const ExaminedChannel& examined, const SuddenStep& step, const std::vector<SuddenStep>& steps) {
  const double near_k = std::max(kReturnShare * std::abs(step.jump_k), 0.5 * least_jump_k(examined));
  const std::size_t look = examined.cells_in(stays_s(examined, true), 3);
  std::size_t count = 0;
  // By a sudden step back ...
  for (const SuddenStep& other : steps) {
    if (other.onset_s <= step.onset_s || other.jump_k * step.jump_k >= 0.0) continue;
    const double left = examined.median_apart(other.after, other.after + look, count) - step.before_k;
    if (count > 0 && std::abs(left) <= near_k) return other.onset_s;
  }
  // ... or little by little, while all is still hot.
  const double hot_c = examined.course->ambient_c + kHotShare * examined.course->range_k;
  for (std::size_t k = step.after; k + look <= examined.cells(); k += std::max<std::size_t>(look / 4, 1)) {
    if (examined.others_known[k] == 0 || examined.others_c[k] < hot_c) continue;
    const double left = examined.median_apart(k, k + look, count) - step.before_k;
    if (count * 2 >= look && std::abs(left) <= 0.5 * near_k) return examined.time_s(k);
  }
  return examined.sampled->end_s;
}

}  // namespace

std::vector<Suspect> find_detached(const ExaminedChannel& examined, const std::vector<SuddenStep>& steps) {
  std::vector<Suspect> found;
  double done_s = -1.0;
  for (const SuddenStep& step : steps) {
    if (step.onset_s <= done_s || !stays(examined, step)) continue;
    if (step.jump_k < 0.0 && was_there_before(examined, step, done_s)) continue;
    Suspect suspect;
    suspect.channel = examined.index();
    suspect.code = Suspect::Code::detached;
    suspect.from_s = step.onset_s;
    suspect.to_s = back_s(examined, step, steps);
    done_s = suspect.to_s;
    suspect.evidence = {.kind = SuspectEvidence::Kind::sudden_step,
                        .change_k = step.jump_k,
                        .seconds = suspect.to_s - suspect.from_s};
    found.push_back(std::move(suspect));
  }
  return found;
}

}  // namespace soakwright
