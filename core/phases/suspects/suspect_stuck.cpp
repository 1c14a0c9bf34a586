// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/suspect_stuck.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "core/phases/robust.h"

namespace soakwright {

namespace {

// The others move by this much, and by this share of the range, while it stands: a slow thermocouple in a
// thick wall stands for some minutes too when the furnace is shut off.
constexpr double kMovedK = 40.0;
constexpr double kMovedShare = 0.07;
// ... and are away for this long.
constexpr double kAwayShare = 0.02;
constexpr double kAwayMostS = 600.0;
// Where it does move a little, within its noise, the others must have moved so many times more.
constexpr double kInexactTimes = 2.0;
// "The others" are more than half of them, and each has moved by half as much.
constexpr double kMostOfThem = 0.6;
// A channel whose readings flicker cannot show the very same value for long by chance; then less will do.
constexpr double kMovedExactK = 10.0;
constexpr double kFlickers =
    0.5;  // of neighbours alike at rest; more, and the digit is coarser than the noise
constexpr double kByChance = 1e-6;
constexpr std::size_t kFewestExact = 8;
constexpr std::size_t kFewestStill = 3;
// Standing still: within the noise.
constexpr double kStillNoises = 6.0;
constexpr double kStillK = 0.5;
// What the others only scatter (where they are one or two) is no movement.
constexpr double kOthersNoises = 10.0;
// A fall that ends in standing still began at most this long before.
constexpr double kFallShare = 0.05;
constexpr double kFallMostS = 2400.0;

struct Still {
  std::size_t first = 0;  ///< cell
  std::size_t last = 0;   ///< one past the end
};

/// The comparable cells of a channel.
struct ComparableCells {
  std::vector<std::size_t> cells;
  std::vector<double> celsius;
};

ComparableCells comparable_cells(const ExaminedChannel& examined) {
  ComparableCells comparable;
  comparable.cells.reserve(examined.cells());
  comparable.celsius.reserve(examined.cells());
  for (std::size_t k = 0; k < examined.cells(); ++k) {
    if (!examined.comparable(k)) continue;
    comparable.cells.push_back(k);
    comparable.celsius.push_back(examined.celsius(k));
  }
  return comparable;
}

/// Longest time_ranges of comparable cells in which the channel stays within `range_k`, none inside another,
/// of at least kFewestStill cells.
std::vector<Still> still_time_ranges(const ComparableCells& comparable, double range_k) {
  const auto& [cells, readings] = comparable;
  std::vector<Still> time_ranges;
  for (std::size_t i = 0; i < cells.size();) {
    double low = readings[i];
    double high = low;
    std::size_t j = i + 1;
    for (; j < cells.size(); ++j) {
      const double celsius = readings[j];
      if (std::max(high, celsius) - std::min(low, celsius) > range_k) break;
      low = std::min(low, celsius);
      high = std::max(high, celsius);
    }
    // As much of what was before as still fits: the first cell may have been one on the way.
    if (cells[j - 1] + 1 - cells[i] >= kFewestStill) time_ranges.push_back({cells[i], cells[j - 1] + 1});
    if (j >= cells.size()) break;
    // Begin the next at the earliest cell that leaves room for cell j.
    std::size_t next = j;
    double next_low = readings[j];
    double next_high = next_low;
    while (next > i + 1) {
      const double celsius = readings[next - 1];
      if (std::max(next_high, celsius) - std::min(next_low, celsius) > range_k) break;
      next_low = std::min(next_low, celsius);
      next_high = std::max(next_high, celsius);
      --next;
    }
    i = next;
  }
  return time_ranges;
}

/// Lowest and highest of the others in that time.
struct Movement {
  double low_c = 0.0;
  double high_c = 0.0;
  [[nodiscard]] double range_k() const { return high_c - low_c; }
};

Movement movement_of_others(const ExaminedChannel& examined, const Still& still) {
  Movement movement{examined.others_c[still.first], examined.others_c[still.first]};
  for (std::size_t k = still.first; k < still.last; ++k) {
    if (!examined.comparable(k)) continue;
    movement.low_c = std::min(movement.low_c, examined.others_c[k]);
    movement.high_c = std::max(movement.high_c, examined.others_c[k]);
  }
  return movement;
}

double noise_of_others(const ExaminedChannel& examined, const Still& still) {
  return noise_of(std::span<const double>{examined.others_c}.subspan(still.first, still.last - still.first));
}

/// Whether most of the other evaluated channels move, and not only their middle because a few do.
bool most_others_move(const ExaminedChannel& examined, const Still& still, double moved_k) {
  std::size_t all = 0;
  std::size_t moving = 0;
  for (std::size_t i = 0; i < examined.sampled->evaluated; ++i) {
    if (i == examined.trace) continue;
    const SampledTrace& trace = examined.sampled->traces[i];
    double low = 0.0;
    double high = 0.0;
    std::size_t count = 0;
    for (std::size_t k = still.first; k < still.last; ++k) {
      if (trace.known[k] == 0) continue;
      low = count == 0 ? trace.celsius[k] : std::min(low, trace.celsius[k]);
      high = count == 0 ? trace.celsius[k] : std::max(high, trace.celsius[k]);
      ++count;
    }
    if (count < 3) continue;
    ++all;
    if (high - low >= moved_k) ++moving;
  }
  return static_cast<double>(moving) >= kMostOfThem * static_cast<double>(all);
}

/// For how long the others are away from where they are most of the time, by more than `near_k`.
double away_of_others_s(const ExaminedChannel& examined, const Still& still, double near_k) {
  std::vector<double> sorted;
  for (std::size_t k = still.first; k < still.last; ++k)
    if (examined.comparable(k)) sorted.push_back(examined.others_c[k]);
  std::sort(sorted.begin(), sorted.end());
  std::size_t most = 0;
  for (std::size_t i = 0, j = 0; j < sorted.size(); ++j) {
    while (sorted[j] - sorted[i] > 2.0 * near_k) ++i;
    most = std::max(most, j - i + 1);
  }
  return static_cast<double>(sorted.size() - most) * examined.sampled->step_s;
}

/// Share of neighbouring cells outside that time that show the same value though nothing moves.
double share_of_equals(const ExaminedChannel& examined, const Still& still) {
  std::size_t equal = 0;
  std::size_t all = 0;
  for (std::size_t k = 0; k + 1 < examined.cells(); ++k) {
    if (k + 1 >= still.first && k < still.last) continue;
    if (!examined.comparable(k) || !examined.comparable(k + 1)) continue;
    if (std::abs(examined.others_c[k + 1] - examined.others_c[k]) > 0.5 * examined.digit_k) continue;
    ++all;
    if (std::abs(examined.celsius(k + 1) - examined.celsius(k)) < 0.2 * examined.digit_k) ++equal;
  }
  return all < 10 ? 1.0 : static_cast<double>(equal) / static_cast<double>(all);
}

/// Whether the channel came to its standing by a sudden fall or jump.
bool fell_there(const ExaminedChannel& examined, const Still& still, const std::vector<SuddenStep>& steps) {
  const double from_s = examined.time_s(still.first) -
                        std::min(kFallShare * examined.sampled->duration_s(), kFallMostS) -
                        2.0 * examined.sampled->step_s;
  const double to_s = examined.time_s(still.first) + 2.0 * examined.sampled->step_s;
  return std::any_of(steps.begin(), steps.end(), [&](const SuddenStep& step) {
    if (step.onset_s < from_s || step.onset_s > to_s) return false;
    const double towards = examined.celsius(still.first) - examined.celsius(step.before);
    return towards * step.jump_k > 0.0 && std::abs(towards) >= 0.5 * least_jump_k(examined);
  });
}

/// Whether it only waits at ambient: a section whose heating starts later, or one that has cooled sooner than
/// the rest.
bool waits_at_ambient(const ExaminedChannel& examined, const Still& still) {
  if (!near_ambient(*examined.course, examined.celsius(still.first))) return false;
  const auto moves_elsewhere = [&](std::size_t first, std::size_t last) {
    for (std::size_t k = first; k < last; ++k)
      if (examined.known(k) && !near_ambient(*examined.course, examined.celsius(k))) return true;
    return false;
  };
  std::size_t before = 0;
  while (before < still.first && !examined.known(before)) ++before;
  if (before + 1 >= still.first) return moves_elsewhere(still.last, examined.cells());
  std::size_t after = still.last;
  while (after < examined.cells() && !examined.known(after)) ++after;
  return after == examined.cells() && examined.others_c[still.last - 1] < examined.others_c[still.first] &&
         moves_elsewhere(0, still.first);
}

/// First and last row that still show the standing value, from the cells outwards.
void to_rows(const ExaminedChannel& examined, const Still& still, double range_k, Suspect& suspect) {
  // Two cells further than it stands, counted by what has readings: a gap may lie beside it.
  std::size_t first = still.first;
  for (std::size_t left = 2; left > 0 && first > 0;)
    if (examined.known(--first)) --left;
  std::size_t last = still.last - 1;
  for (std::size_t left = 2; left > 0 && last + 1 < examined.cells();)
    if (examined.known(++last)) --left;
  const double reach = 0.5 * examined.sampled->step_s;
  const RowsNear rows = rows_near(examined, examined.time_s(first) - reach, examined.time_s(last) + reach);
  if (rows.size() == 0) return;
  std::size_t middle_cell = still.first + (still.last - still.first) / 2;
  while (middle_cell > still.first && !examined.comparable(middle_cell)) --middle_cell;
  const double value = examined.celsius(middle_cell);
  const auto stands = [&](std::size_t i) { return std::abs(rows.celsius[i] - value) <= range_k; };
  const auto at = std::lower_bound(rows.times_s.begin(), rows.times_s.end(), examined.time_s(middle_cell));
  std::size_t from = std::min(static_cast<std::size_t>(at - rows.times_s.begin()), rows.size() - 1);
  std::size_t to = from;
  while (from > 0 && stands(from - 1)) --from;
  while (to + 1 < rows.size() && stands(to + 1)) ++to;
  suspect.from_s = rows.times_s[from];
  suspect.to_s = rows.times_s[to];
}

}  // namespace

std::vector<Suspect> find_stuck(const ExaminedChannel& examined, const std::vector<SuddenStep>& steps) {
  std::vector<Suspect> found;
  const double exact_k = 0.2 * examined.digit_k;
  const double still_k = std::max(1.2 * examined.digit_k, kStillNoises * examined.noise_k + kStillK);
  const double moved_k = std::max(kMovedK, kMovedShare * examined.course->range_k);
  const double away_s = std::min(kAwayShare * examined.sampled->duration_s(), kAwayMostS);
  const ComparableCells comparable = comparable_cells(examined);
  for (const bool exact : {true, false}) {
    const double range_k = exact ? exact_k : still_k;
    for (const Still& still : still_time_ranges(comparable, range_k)) {
      const Movement movement = movement_of_others(examined, still);
      if (movement.range_k() < (exact ? kMovedExactK : kInexactTimes * moved_k)) continue;
      bool stuck = movement.range_k() >= moved_k &&
                   away_of_others_s(examined, still, std::max(still_k, 5.0)) >= away_s;
      if (!stuck && exact && still.last - still.first >= kFewestExact &&
          away_of_others_s(examined, still, 0.25 * kMovedExactK) >= 0.5 * away_s) {
        const double share = share_of_equals(examined, still);
        stuck =
            share < kFlickers && std::pow(share, static_cast<double>(still.last - still.first)) < kByChance;
      }
      if (stuck && !most_others_move(examined, still, 0.5 * movement.range_k())) continue;
      if (!stuck || fell_there(examined, still, steps) || waits_at_ambient(examined, still)) continue;
      if (movement.range_k() < kOthersNoises * noise_of_others(examined, still)) continue;
      Suspect suspect;
      suspect.channel = examined.index();
      suspect.code = Suspect::Code::stuck;
      to_rows(examined, still, range_k, suspect);
      const bool again = std::any_of(found.begin(), found.end(), [&](const Suspect& other) {
        return suspect.from_s <= other.to_s && suspect.to_s >= other.from_s;
      });
      if (again) continue;
      suspect.evidence = {.kind = SuspectEvidence::Kind::stands_as_others_move,
                          .value_c = examined.celsius(still.first),
                          .low_c = movement.low_c,
                          .high_c = movement.high_c,
                          .seconds = suspect.to_s - suspect.from_s};
      found.push_back(std::move(suspect));
    }
  }
  return found;
}

}  // namespace soakwright
