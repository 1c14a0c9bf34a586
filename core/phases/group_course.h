// SPDX-License-Identifier: GPL-3.0-or-later
// The course of the evaluated group: one temperature at each time, with what tells noise from movement.
//
// Where the channels move together it is the median of those known. Where one channel drives the others
// (a shroud or furnace wall around work that follows far behind), their middle shows no plateau until hours
// later; then it is the driving channel, if there is one that plainly leads.
#pragma once

#include <optional>
#include <vector>

#include "core/phases/sampled_record.h"

namespace soakwright {

/// Ambient where the record never shows it.
inline constexpr double kRoomC = 20.0;

struct GroupCourse {
  std::vector<double> times_s;  ///< only times at which the course is known
  std::vector<double> celsius;
  double step_s = 0.0;     ///< usual distance of two points
  double noise_k = 0.0;    ///< standard deviation of a point
  double ambient_c = 0.0;  ///< where the record starts or ends cold, else a usual room's
  double lowest_c = 0.0;
  double highest_c = 0.0;
  double range_k = 0.0;               ///< highest less the lower of ambient and lowest
  std::optional<std::size_t> leader;  ///< index into SampledRecord::traces where one channel drives the rest
  [[nodiscard]] std::size_t points() const { return times_s.size(); }
};

GroupCourse group_course(const Record& record, const SampledRecord& sampled);

/// Whether a level is so near ambient that nothing is being treated there.
bool near_ambient(const GroupCourse& course, double celsius);

}  // namespace soakwright
