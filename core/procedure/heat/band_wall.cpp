// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/heat/band_wall.h"

namespace soakwright {

std::optional<Thickness> wall_of(const BandEntry& band, const Job& job, const Procedure* procedure) {
  if (band.wall) return band.wall;
  for (const WeldEntry& weld : job.welds)
    if (weld.thickness && (band.weld ? weld.number == *band.weld : job.welds.size() == 1))
      return weld.thickness;
  return procedure ? procedure->thickness : std::nullopt;
}

}  // namespace soakwright
