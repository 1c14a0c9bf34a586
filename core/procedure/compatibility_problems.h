// SPDX-License-Identifier: GPL-3.0-or-later
// Where a procedure does not fit a job or a record, in words.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "core/problems/problem.h"
#include "core/procedure/job/job.h"
#include "core/procedure/procedure.h"

namespace soakwright::compatibility_problems {

/// A limit of `stage` that depends on the thickness. `weld` is nullopt unless the job has a [[weld]] for
/// each.
struct LimitByThickness {
  const Procedure& procedure;
  const Stage& stage;
  const Job* job;  ///< null where there is none
  std::optional<std::string> weld;
};
Problem rate_max_without_thickness(const LimitByThickness& limit);
Problem rate_max_below_rate_min(const LimitByThickness& limit);
Problem time_min_without_thickness(const LimitByThickness& limit);
Problem time_min_above_time_max(const LimitByThickness& limit);

/// `spread_within` in `stage`, and no job lists thermocouples.
Problem positions_without_job(const Procedure& procedure, const Stage& stage);
/// Of the thermocouple `name`; `line` in `file` is its entry, or the stage's where no job lists it.
Problem thermocouple_without_position(const std::string& file, std::size_t line, const std::string& name,
                                      const Stage& stage);

/// A guarded decision, and no job lists thermocouples.
Problem tolerances_without_job(const Procedure& procedure);
enum class Lacking { type, tolerance, type_and_tolerance };
/// `line` in `file` is the thermocouple's entry, 0 where the job does not list it.
Problem thermocouple_without_tolerance(const std::string& file, std::size_t line, const std::string& name,
                                       Lacking lacking);
/// The published tables have no such class for the thermocouple's type.
Problem no_published_tolerance(const Job& job, const ThermocoupleEntry& entry, const std::string& name);

}  // namespace soakwright::compatibility_problems
