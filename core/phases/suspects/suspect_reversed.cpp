// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/suspect_reversed.h"

#include <algorithm>
#include <cmath>

#include "core/phases/suspects/suspect_mirrored.h"

namespace soakwright {

namespace {

// One look at a time: from one turn of the others to where they have moved by this much, or by this share.
constexpr double kMoveK = 30.0;
constexpr double kMoveShare = 0.06;
constexpr double kMoveNoises = 15.0;
// Against the others: by at least this share of their move, the other way.
constexpr double kAgainst = -0.4;
constexpr double kWith = 0.3;
// A channel that is late at a corner runs against the others for one look; this many looks on end are no
// accident.
constexpr std::size_t kFewestLooks = 3;
// It was right at first where it stood apart from the others by no more than this share of what they had
// risen.
constexpr double kReversedRightFirstShare = 0.4;
constexpr double kToldFromK = 40.0;     // near ambient both ways round read the same
constexpr double kBelowRangeK = 100.0;  // below ambient: nothing that a recorder's range ends at is warmer
// Of two channels, the one that goes this far below ambient is the wrong one.
constexpr double kBelowAmbientK = 15.0;
// All of the record, where at least this share of the looks say so.
constexpr double kReversedNearlyAll = 0.8;

struct Look {
  std::size_t first = 0;  ///< cell
  std::size_t last = 0;   ///< cell
  double others_k = 0.0;
  double own_k = 0.0;
  [[nodiscard]] bool with_the_others() const { return own_k / others_k >= kWith; }
  [[nodiscard]] bool against() const { return own_k / others_k <= kAgainst; }
};

std::vector<Look> looks_of(const ExaminedChannel& examined) {
  const double move = std::max({kMoveK, kMoveShare * examined.course->range_k,
                                kMoveNoises * std::max(examined.noise_k, examined.course->noise_k)});
  std::vector<Look> looks;
  std::size_t from = examined.cells();
  std::size_t lowest = from;
  std::size_t highest = from;
  for (std::size_t k = 0; k < examined.cells(); ++k) {
    if (!examined.comparable(k)) continue;
    if (from == examined.cells()) from = lowest = highest = k;
    if (examined.others_c[k] <= examined.others_c[lowest]) lowest = k;
    if (examined.others_c[k] >= examined.others_c[highest]) highest = k;
    const bool up = examined.others_c[k] - examined.others_c[lowest] >= move;
    const bool down = examined.others_c[highest] - examined.others_c[k] >= move;
    if (!up && !down) continue;
    const std::size_t start = up ? lowest : highest;
    looks.push_back({start, k, examined.others_c[k] - examined.others_c[start],
                     examined.celsius(k) - examined.celsius(start)});
    from = lowest = highest = k;
  }
  return looks;
}

/// Whether it stays above ambient and leaves the others by sudden steps: off the work, and not the wrong way
/// round.
bool only_fell(const ExaminedChannel& examined, const std::vector<SuddenStep>& steps, std::size_t first,
               std::size_t last) {
  for (std::size_t k = first; k <= last; ++k)
    if (examined.known(k) && examined.celsius(k) < examined.course->ambient_c - kBelowAmbientK) return false;
  return std::any_of(steps.begin(), steps.end(),
                     [&](const SuddenStep& step) { return step.before + 1 >= first && step.before <= last; });
}

/// Until when it gives no reading, or one far below ambient where a recorder's range ends, after `from_s`.
double below_range_until_s(const ExaminedChannel& examined, double from_s) {
  const double ambient_c = examined.course->ambient_c;
  for (std::size_t k = examined.cell_at(from_s); k < examined.cells(); ++k) {
    const bool others_hot = examined.others_known[k] != 0 && examined.others_c[k] >= ambient_c + kToldFromK;
    if (examined.known(k) && examined.celsius(k) > ambient_c - kBelowRangeK && others_hot)
      return k > 0 ? examined.time_s(k - 1) : from_s;
  }
  return examined.sampled->end_s;
}

/// Time of the first row without a reading, around `cell`.
double first_missing_s(const ExaminedChannel& examined, std::size_t cell) {
  const std::vector<double>& times = examined.record->times_s;
  const auto begin = times.begin() + static_cast<std::ptrdiff_t>(examined.record->first_row);
  const auto end = times.begin() + static_cast<std::ptrdiff_t>(examined.record->end_row);
  std::size_t row =
      static_cast<std::size_t>(std::lower_bound(begin, end, examined.time_s(cell)) - times.begin());
  while (row > examined.record->first_row && !examined.channel().readings.celsius(row - 1)) --row;
  return times[row];
}

}  // namespace

std::vector<Suspect> find_reversed(const ExaminedChannel& examined, const std::vector<SuddenStep>& steps) {
  const std::vector<Look> looks = looks_of(examined);
  // The longest run of looks that are against the others, one that is not among five forgiven.
  std::size_t best_first = 0;
  std::size_t best_last = 0;
  for (std::size_t i = 0; i < looks.size(); ++i) {
    std::size_t against = 0;
    for (std::size_t j = i; j < looks.size(); ++j) {
      if (looks[j].against()) ++against;
      if (static_cast<double>(against) < kReversedNearlyAll * static_cast<double>(j - i + 1)) break;
      if (looks[i].against() && looks[j].against() && j + 1 - i > best_last - best_first) {
        best_first = i;
        best_last = j + 1;
      }
    }
  }
  if (best_last - best_first < std::min(kFewestLooks, std::max<std::size_t>(looks.size(), 2)))
    return find_mirrored(examined, steps);
  // A look at which it hardly moved, lag and noise, does not say that it was right before.
  while (best_first > 0 && !looks[best_first - 1].with_the_others()) --best_first;
  // Of two channels that run against each other the one that goes below ambient while the other heats is
  // wrong.
  if (examined.sampled->evaluated <= 2) {
    double lowest_c = examined.celsius(looks[best_first].first);
    for (std::size_t k = looks[best_first].first; k <= looks[best_last - 1].last; ++k)
      if (examined.known(k)) lowest_c = std::min(lowest_c, examined.celsius(k));
    if (lowest_c > std::min(examined.course->ambient_c, kRoomC) - kBelowAmbientK) return {};
  }

  if (only_fell(examined, steps, looks[best_first].first, looks[best_last - 1].last)) return {};

  Suspect suspect;
  suspect.channel = examined.index();
  suspect.code = Suspect::Code::reversed;
  const bool from_start = best_first == 0;
  const bool to_end = best_last == looks.size();
  suspect.from_s = examined.sampled->begin_s;
  suspect.to_s = examined.sampled->end_s;
  const auto step_within = [&](double from_s, double to_s, double otherwise_s) {
    for (const SuddenStep& step : steps)
      if (step.onset_s >= from_s && step.onset_s <= to_s) return step.onset_s;
    return otherwise_s;
  };
  if (!from_start) {
    const Look& before = looks[best_first - 1];
    const Look& first = looks[best_first];
    std::size_t count = 0;
    const double before_k = examined.median_apart(before.first, before.first + 8, count);
    const double onset =
        onset_of_excursion(examined, examined.time_s(before.first), examined.time_s(first.last), before_k,
                           first.own_k - first.others_k);
    suspect.from_s = step_within(examined.time_s(before.first), examined.time_s(first.last), onset);
    // Far below zero a reading is none: what went missing since the last look that was right belongs to it.
    for (std::size_t k = before.last; k < first.first; ++k)
      if (!examined.known(k) && examined.sampled->rowless[k] == 0) {
        suspect.from_s = first_missing_s(examined, k);
        break;
      }
  }
  if (from_start) {  // unless it only came to the other side before the first look was over
    const Look& first = looks.front();
    for (const SuddenStep& step : steps) {
      const double hot_k = examined.others_c[step.before] - examined.course->ambient_c;
      if (step.before >= first.last || hot_k < kToldFromK) continue;
      if (std::abs(step.before_k) > kReversedRightFirstShare * hot_k) continue;
      suspect.from_s = step.onset_s;
      break;
    }
  }
  if (!to_end) {
    const Look& last = looks[best_last - 1];
    suspect.to_s = step_within(examined.time_s(last.first), examined.time_s(looks[best_last].last),
                               examined.time_s(last.last));
    suspect.to_s = std::max(suspect.to_s, below_range_until_s(examined, suspect.to_s));
  }
  // Where the readings end below the recorder's range, it was the wrong way round before it showed a
  // direction.
  for (const Suspect& mirrored : find_mirrored(examined, steps))
    if (mirrored.from_s < suspect.from_s && mirrored.to_s >= suspect.from_s) suspect.from_s = mirrored.from_s;
  double others = 0.0;
  double own = 0.0;
  for (std::size_t i = best_first; i < best_last; ++i)
    if (looks[i].others_k * looks[best_first].others_k > 0.0) {
      others += looks[i].others_k;
      own += looks[i].own_k;
    }
  suspect.evidence = {.kind = SuspectEvidence::Kind::opposite_to_others, .change_k = own, .others_k = others};
  return {suspect};
}

}  // namespace soakwright
