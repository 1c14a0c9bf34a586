// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/suspect_open.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace soakwright {

namespace {

// A reading or two that a radio link loses is no broken wire.
constexpr double kOpenIntervals = 6.0;
constexpr double kLeastShareOfRecord = 0.004;
constexpr double kOpenLongEnoughS = 180.0;
// Where no work can be: this far above the group's highest, or below ambient (a burnout value, a zero).
constexpr double kBeyondTopK = 100.0;
constexpr double kBeyondTopShare = 0.2;
constexpr double kBelowLowestK = 15.0;
// A broken wire's value stands still; work that is this far away does not.
constexpr double kStandingK = 2.0;
constexpr std::size_t kFewestOpenCells = 3;
// It stands there though the others move by this much, or it is such a value that no work or air has.
constexpr double kNeighboursMoveK = 20.0;
constexpr double kStandingTimes =
    2.0;  // and for longer than a missing reading need last: a hot spot may rest too

double shortest_s(const ExaminedChannel& examined) {
  return std::max(kOpenIntervals * examined.record->interval_s,
                  std::min(kOpenLongEnoughS, kLeastShareOfRecord * examined.sampled->duration_s()));
}

struct RowRange {
  std::size_t first = 0;
  std::size_t last = 0;  ///< included
  /// Time that its rows stand for: what the recorder left out altogether is no one channel's.
  [[nodiscard]] double seconds(double interval_s) const {
    return static_cast<double>(last - first + 1) * interval_s;
  }
};

/// Rows of the record around the time_range of cells [first, last) for which `belongs` holds, from its middle
/// outwards.
template <typename Belongs>
RowRange range_of_rows(const ExaminedChannel& examined, std::size_t first, std::size_t last,
                       const Belongs& belongs) {
  const std::vector<double>& times = examined.record->times_s;
  const double middle_s = 0.5 * (examined.time_s(first) + examined.time_s(last - 1));
  const auto begin = times.begin() + static_cast<std::ptrdiff_t>(examined.record->first_row);
  const auto end = times.begin() + static_cast<std::ptrdiff_t>(examined.record->end_row);
  std::size_t from = static_cast<std::size_t>(std::lower_bound(begin, end, middle_s) - times.begin());
  from = std::min(from, examined.record->end_row - 1);
  std::size_t to = from;
  while (from > examined.record->first_row && belongs(from - 1)) --from;
  while (to + 1 < examined.record->end_row && belongs(to + 1)) ++to;
  return {from, to};
}

Suspect open_suspect(const ExaminedChannel& examined, const RowRange& time_range,
                     const SuspectEvidence& evidence) {
  Suspect suspect;
  suspect.channel = examined.index();
  suspect.code = Suspect::Code::open;
  suspect.from_s = examined.record->times_s[time_range.first];
  suspect.to_s = examined.record->times_s[time_range.last];
  suspect.evidence = evidence;
  suspect.evidence.seconds = suspect.to_s - suspect.from_s;
  return suspect;
}

}  // namespace

std::vector<Suspect> find_missing(const ExaminedChannel& examined) {
  std::vector<Suspect> found;
  const SampledTrace& trace = examined.sampled->traces[examined.trace];
  const Readings& readings = examined.channel().readings;
  if (readings.complete()) return found;
  const auto missing = [&](std::size_t k) {
    return trace.known[k] == 0 && trace.exclusion[k] == 0 &&
           (examined.sampled->rowless[k] != 0 || examined.others_known[k] != 0 ||
            examined.sampled->evaluated < 2);
  };
  for (std::size_t k = 0; k < examined.cells();) {
    if (!missing(k) || examined.sampled->rowless[k] != 0) {
      ++k;
      continue;
    }
    std::size_t last = k;
    while (last < examined.cells() && missing(last)) ++last;
    const RowRange time_range =
        range_of_rows(examined, k, last, [&](std::size_t row) { return !readings.celsius(row).has_value(); });
    k = last;
    const double seconds = time_range.seconds(examined.record->interval_s);
    if (seconds < shortest_s(examined)) continue;
    found.push_back(open_suspect(examined, time_range, {.kind = SuspectEvidence::Kind::no_reading}));
  }
  return found;
}

std::vector<Suspect> find_standing_far_off(const ExaminedChannel& examined) {
  std::vector<Suspect> found;
  const GroupCourse& course = *examined.course;
  if (course.points() == 0) return found;
  const double top = course.highest_c + std::max(kBeyondTopK, kBeyondTopShare * course.range_k);
  const double bottom = std::min(course.lowest_c, course.ambient_c) - kBelowLowestK;
  const bool alone = examined.sampled->evaluated < 2;  // then only what no work has at all
  const double standing = std::max(kStandingK, 1.5 * examined.digit_k);
  if (!alone && examined.highest_c <= top && examined.lowest_c >= bottom) return found;
  for (std::size_t k = 0; k < examined.cells();) {
    const bool far_off =
        examined.known(k) &&
        (alone ? no_work(examined.celsius(k)) : examined.celsius(k) > top || examined.celsius(k) < bottom);
    std::size_t last = k + 1;
    if (far_off)
      while (last < examined.cells() &&
             ((examined.sampled->rowless[last] != 0 && !examined.known(last)) ||
              (examined.known(last) && std::abs(examined.celsius(last) - examined.celsius(k)) <= standing)))
        ++last;
    if (!far_off || last - k < kFewestOpenCells) {
      ++k;
      continue;
    }
    const double value = examined.celsius(k);
    double low = examined.others_c[k];
    double high = low;
    for (std::size_t i = k; i < last; ++i) {
      if (examined.others_known[i] == 0) continue;
      low = std::min(low, examined.others_c[i]);
      high = std::max(high, examined.others_c[i]);
    }
    if (high - low < kNeighboursMoveK && !no_work(value)) {
      k = last;
      continue;
    }
    const RowRange time_range = range_of_rows(examined, k, last, [&](std::size_t row) {
      const auto celsius = examined.channel().readings.celsius(row);
      return celsius && std::abs(*celsius - value) <= 2.0 * standing;
    });
    k = std::max(last, examined.cell_at(examined.record->times_s[time_range.last]));
    const double seconds = time_range.seconds(examined.record->interval_s);
    if (seconds < kStandingTimes * shortest_s(examined)) continue;
    found.push_back(
        open_suspect(examined, time_range,
                     {.kind = SuspectEvidence::Kind::value_of_no_work, .value_c = value, .alone = alone}));
  }
  return found;
}

}  // namespace soakwright
