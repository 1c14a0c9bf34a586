// SPDX-License-Identifier: GPL-3.0-or-later
// The bands of a local heat treatment, and whether the thermocouples' positions fit them.
//
// AWS D10.10 (2021), from memory: at the edge of the heated band the work has at least half the temperature
// of the edge of the soak band; the two edges are L = 2·√(R·t) apart, R the inside radius, t the wall
// thickness. The width of the soak band is the job's.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/procedure/procedure.h"
#include "core/record/record.h"

namespace soakwright {

/// Where a thermocouple sits, held against the bands.
enum class BandPlace {
  fits,
  outside_soak_band,   ///< zone soak, but not on the soak band
  inside_edge,         ///< zone edge, but nearer to the soak band than L: it reads hotter than the edge
  beyond_heated_band,  ///< farther out than the heated band is wide
  no_position,         ///< the job does not say where it is
};

struct BandPosition {
  std::size_t channel = 0;               ///< index into Record::channels
  std::optional<double> from_centre_mm;  ///< to either side
  BandPlace place = BandPlace::fits;
};

/// The bands of one weld. Lengths in millimetres along the work; widths are whole, both sides of the weld.
struct Bands {
  std::optional<std::string> weld;
  double diameter_mm = 0.0;
  double wall_mm = 0.0;
  double inside_radius_mm = 0.0;
  double edge_distance_mm = 0.0;  ///< L
  std::optional<double> soak_band_mm;
  std::optional<double> heated_band_min_mm;  ///< soak band + 2·L
  std::optional<double> heated_band_mm;      ///< as the job gives it
  [[nodiscard]] bool heated_band_is_narrow() const {
    return heated_band_mm && heated_band_min_mm && *heated_band_mm < *heated_band_min_mm;
  }
  std::vector<BandPosition> positions;  ///< only where the soak band is given
};

/// Each `[[band]]` of the job, on the thermocouples of its weld.
std::vector<Bands> bands_of(const Job& job, const Procedure* procedure, const Record& record);

}  // namespace soakwright
