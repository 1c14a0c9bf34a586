// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/group_course.h"

#include <algorithm>
#include <cmath>

#include "core/phases/robust.h"
#include "core/system/parallel_for.h"

namespace soakwright {

namespace {

constexpr double kColdestStartC = 50.0;  // a start or end above this is not ambient

// A channel leads where, when it has made half its rise, the middle of the rest has made less than this share
// of its own: work that only lags in a furnace (a few tens of kelvin of several hundred) has made nearly
// half.
constexpr double kFollowersShareMost = 0.25;
// What is driven does rise, and does not fall meanwhile, as a thermocouple does that is reversed or off the
// work.
constexpr double kDrivenShareLeast = 0.1;
constexpr double kFallenShareMost = 0.05;
// ... and stands above the rest, when it first comes to its top, by at least this share of its rise.
constexpr double kLeadShareLeast = 0.35;
// What it drives does not stay where it stays: the middle of the rest spends less than this share of the
// plateau's time at the plateau's height. Work that comes to its furnace's temperature has a course of its
// own.
constexpr double kStaysShareMost = 0.3;
constexpr double kSameHeightShare = 0.06;  // of the rise
// It rises, and does not jump there as a broken wire does: the cell before has made this share of the way.
constexpr double kOnTheWayShare = 0.6;
// It has come to its plateau when it has made this share of the rise to the plateau's level.
constexpr double kArrivedShare = 0.9;

GroupCourse points_of(const SampledRecord& sampled, std::optional<std::size_t> leader) {
  GroupCourse course;
  course.step_s = sampled.step_s;
  course.leader = leader;
  for (std::size_t k = 0; k < sampled.cells(); ++k) {
    std::optional<double> value;
    if (leader) {
      const SampledTrace& trace = sampled.traces[*leader];
      if (trace.known[k] != 0) value = trace.celsius[k];
    } else {
      if (sampled.middles[k].count > 0) value = sampled.middles[k].median();
    }
    if (!value) continue;
    course.times_s.push_back(sampled.times_s[k]);
    course.celsius.push_back(*value);
  }
  return course;
}

/// Median of three neighbours: a single wild point goes, corners and ramps stay.
void drop_single_spikes(std::vector<double>& values) {
  if (values.size() < 5) return;  // with fewer, each point is needed
  double before = values[0];
  for (std::size_t i = 1; i + 1 < values.size(); ++i) {
    const double here = values[i];
    values[i] = std::max(std::min(before, here), std::min(std::max(before, here), values[i + 1]));
    before = here;
  }
}

double mean_of_first(const std::vector<double>& values, bool from_back) {
  const std::size_t n = std::clamp<std::size_t>(values.size() / 200, 1, 5);
  std::vector<double> some;
  for (std::size_t i = 0; i < n; ++i) some.push_back(from_back ? values[values.size() - 1 - i] : values[i]);
  return median_of(some);
}

void measure_levels(GroupCourse& course, double resolution_k) {
  if (course.celsius.empty()) return;
  // A recorder's digit is noise too, u = q / sqrt(12), even where the readings stand still.
  course.noise_k = std::max(noise_of(course.celsius), resolution_k / std::sqrt(12.0));
  drop_single_spikes(course.celsius);
  const double start = mean_of_first(course.celsius, false);
  const double end = mean_of_first(course.celsius, true);
  const double colder = std::min(start, end);
  course.ambient_c = colder <= kColdestStartC ? colder : kRoomC;
  // A record that never leaves the room, or one below it, has its own range.
  const auto [low, high] = std::minmax_element(course.celsius.begin(), course.celsius.end());
  course.lowest_c = *low;
  course.highest_c = *high;
  course.range_k = course.highest_c - std::min(course.ambient_c, course.lowest_c);
}

/// The level at which a trace spends most of its time in its upper half, and when it first comes near it.
struct Plateau {
  double level_c = 0.0;
  std::size_t arrival = 0;    ///< cell
  std::size_t half = 0;       ///< cell of half the rise
  double share_before = 0.0;  ///< of the rise, in the cell before arrival
  double rise_k = 0.0;
};

std::optional<Plateau> plateau_of(const SampledTrace& trace) {
  std::vector<double> known;
  for (std::size_t k = 0; k < trace.celsius.size(); ++k)
    if (trace.known[k] != 0) known.push_back(trace.celsius[k]);
  if (known.size() < 10) return std::nullopt;
  const double start = known.front();
  const double top = *std::max_element(known.begin(), known.end());
  Plateau plateau;
  std::vector<double> upper;
  for (const double celsius : known)
    if (celsius > 0.5 * (start + top)) upper.push_back(celsius);
  plateau.level_c = median_of(upper);
  plateau.rise_k = plateau.level_c - start;
  bool half = false;
  for (std::size_t k = 0; k < trace.celsius.size(); ++k) {
    if (trace.known[k] == 0) continue;
    const double share = (trace.celsius[k] - start) / std::max(plateau.rise_k, 1e-9);
    if (!half && share >= 0.5) {
      plateau.half = k;
      half = true;
    }
    if (share < kArrivedShare) {
      plateau.share_before = share;
      continue;
    }
    plateau.arrival = k;
    return plateau;
  }
  return std::nullopt;
}

/// Median of the evaluated traces known in a cell but for `trace`; nullopt if none is known.
std::optional<double> median_of_rest(const SampledRecord& sampled, std::size_t cell, std::size_t trace) {
  const CellMiddle& middle = sampled.middles[cell];
  const SampledTrace& own = sampled.traces[trace];
  const bool part_of_it = own.known[cell] != 0;
  if (middle.count < (part_of_it ? 2U : 1U)) return std::nullopt;
  return part_of_it ? middle.median_without(own.celsius[cell]) : middle.median();
}

/// Rise of the middle of the rest from the record's start to `cell`; nullopt if either is unknown.
std::optional<double> rise_of_rest(const SampledRecord& sampled, std::size_t trace, std::size_t cell) {
  const auto start = median_of_rest(sampled, 0, trace);
  const auto here = median_of_rest(sampled, cell, trace);
  if (!start || !here) return std::nullopt;
  return *here - *start;
}

bool leads(const SampledRecord& sampled, std::size_t trace, const Plateau& plateau) {
  constexpr std::size_t kLooks = 256;  // places at which the rest is looked at
  if (plateau.share_before < kOnTheWayShare) return false;
  const auto at_half = rise_of_rest(sampled, trace, plateau.half);
  const auto at_arrival = median_of_rest(sampled, plateau.arrival, trace);
  if (!at_half || !at_arrival) return false;
  const SampledTrace& own = sampled.traces[trace];
  if (own.celsius[plateau.arrival] - *at_arrival < kLeadShareLeast * plateau.rise_k) return false;
  double highest = 0.0;
  std::size_t own_stays = 0;
  std::size_t rest_stays = 0;
  for (std::size_t i = 0; i <= kLooks; ++i) {
    const std::size_t k = i * (sampled.cells() - 1) / kLooks;
    const auto rise = rise_of_rest(sampled, trace, k);
    if (!rise) continue;
    highest = std::max(highest, *rise);
    const auto at_height = [&](double celsius) {
      return std::abs(celsius - plateau.level_c) <= kSameHeightShare * plateau.rise_k;
    };
    if (own.known[k] != 0 && at_height(own.celsius[k])) ++own_stays;
    if (at_height(*median_of_rest(sampled, k, trace))) ++rest_stays;
  }
  if (highest < kDrivenShareLeast * plateau.rise_k || *at_half < -kFallenShareMost * plateau.rise_k)
    return false;
  return *at_half < kFollowersShareMost * highest &&
         static_cast<double>(rest_stays) < kStaysShareMost * static_cast<double>(own_stays);
}

/// The channel that drives the rest: it comes first to a plateau while the middle of the rest has hardly
/// begun.
std::optional<std::size_t> leader_of(const SampledRecord& sampled, double noise_k) {
  constexpr double kLeastRiseK = 30.0;  // less is a room, not a heating
  if (sampled.evaluated < 2) return std::nullopt;
  std::optional<std::size_t> best;
  std::size_t earliest = sampled.cells();
  std::vector<std::optional<Plateau>> plateaus(sampled.evaluated);
  parallel_for(sampled.evaluated, sampled.evaluated * sampled.cells(),
               [&](std::size_t i) { plateaus[i] = plateau_of(sampled.traces[i]); });
  for (std::size_t i = 0; i < sampled.evaluated; ++i) {
    const std::optional<Plateau>& plateau = plateaus[i];
    if (!plateau || plateau->rise_k < std::max(kLeastRiseK, 20.0 * noise_k)) continue;
    if (plateau->arrival >= earliest || !leads(sampled, i, *plateau)) continue;
    earliest = plateau->arrival;
    best = i;
  }
  return best;
}

}  // namespace

bool near_ambient(const GroupCourse& course, double celsius) {
  // A tenth of the rise, so that work left to cool at 70 C after 600 C is idle and a preheat of 100 C is not.
  return celsius <= course.ambient_c + std::clamp(0.1 * course.range_k, 15.0, 60.0);
}

GroupCourse group_course(const Record& record, const SampledRecord& sampled) {
  double resolution_k = 0.0;
  for (std::size_t i = 0; i < sampled.evaluated; ++i)
    resolution_k = std::max(resolution_k, record.channels[sampled.channels[i]].readings.resolution_k());
  GroupCourse course = points_of(sampled, std::nullopt);
  measure_levels(course, resolution_k);
  if (const auto leader = leader_of(sampled, course.noise_k)) {
    course = points_of(sampled, leader);
    measure_levels(course, resolution_k);
  }
  return course;
}

}  // namespace soakwright
