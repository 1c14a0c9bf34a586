// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/heat/preheat_checks.h"

#include "core/procedure/heat/band_wall.h"
#include "core/procedure/heat/preheat.h"
#include "core/procedure/heat/preheat_problems.h"

namespace soakwright {
namespace {

std::size_t line_of(const Job& job, const std::optional<std::string>& weld) {
  for (const WeldEntry& entry : job.welds)
    if (entry.number == weld) return entry.line;
  return 0;
}

}  // namespace

Problems check_preheat(const Procedure& procedure, const Job& job) {
  Problems problems;
  for (const WeldPreheat& weld : preheat_of(job, &procedure)) {
    if (!weld.minimum_asked_for || weld.published_minimum) continue;
    const std::size_t line = line_of(job, weld.weld);
    const std::string name = weld.weld.value_or(std::string{});
    problems.push_back(weld.thickness ? preheat_problems::preheat_too_thin(job, line, name, *weld.thickness)
                                      : preheat_problems::preheat_without_thickness(job, line, name));
  }
  for (const BandEntry& band : job.bands) {
    const auto wall = wall_of(band, job, &procedure);
    if (!wall)
      problems.push_back(preheat_problems::band_without_wall(job, band));
    else if (band.diameter.millimetres() <= 2.0 * wall->millimetres())
      problems.push_back(preheat_problems::band_wall_fills_the_pipe(job, band));
  }
  return problems;
}

}  // namespace soakwright
