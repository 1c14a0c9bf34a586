// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/evaluate/band_positions.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/procedure/heat/band_wall.h"

namespace soakwright {
namespace {

constexpr double kSlackMm = 1e-6;

BandPlace place_of(const Bands& bands, Zone zone, double from_centre_mm) {
  const double soak_edge = *bands.soak_band_mm / 2.0;
  if (bands.heated_band_mm && from_centre_mm > *bands.heated_band_mm / 2.0 + kSlackMm)
    return BandPlace::beyond_heated_band;
  if (zone == Zone::soak)
    return from_centre_mm > soak_edge + kSlackMm ? BandPlace::outside_soak_band : BandPlace::fits;
  return from_centre_mm < soak_edge + bands.edge_distance_mm - kSlackMm ? BandPlace::inside_edge
                                                                        : BandPlace::fits;
}

void add_positions(const BandEntry& entry, const Record& record, Bands& bands) {
  constexpr double kMmPerMetre = 1000.0;
  for (std::size_t i = 0; i < record.channels.size(); ++i) {
    const Channel& channel = record.channels[i];
    if (!on_the_work(channel.role) || (entry.weld && channel.weld && *channel.weld != *entry.weld)) continue;
    BandPosition found{i, std::nullopt, BandPlace::no_position};
    if (channel.position_m) {
      found.from_centre_mm = std::fabs(*channel.position_m - entry.centre_m) * kMmPerMetre;
      found.place = place_of(bands, channel.zone, *found.from_centre_mm);
    }
    bands.positions.push_back(found);
  }
}

}  // namespace

std::vector<Bands> bands_of(const Job& job, const Procedure* procedure, const Record& record) {
  std::vector<Bands> all;
  for (const BandEntry& entry : job.bands) {
    const auto wall = wall_of(entry, job, procedure);
    // Refused by check; inspect says nothing of a band without a wall, or of a pipe that has no inside.
    if (!wall || entry.diameter.millimetres() <= 2.0 * wall->millimetres()) continue;
    Bands bands;
    bands.weld = entry.weld ? entry.weld : job.weld;
    bands.diameter_mm = entry.diameter.millimetres();
    bands.wall_mm = wall->millimetres();
    bands.inside_radius_mm = bands.diameter_mm / 2.0 - bands.wall_mm;
    bands.edge_distance_mm = 2.0 * std::sqrt(bands.inside_radius_mm * bands.wall_mm);
    if (entry.heated_band) bands.heated_band_mm = entry.heated_band->millimetres();
    if (entry.soak_band) {
      bands.soak_band_mm = entry.soak_band->millimetres();
      bands.heated_band_min_mm = *bands.soak_band_mm + 2.0 * bands.edge_distance_mm;
      add_positions(entry, record, bands);
    }
    all.push_back(std::move(bands));
  }
  return all;
}

}  // namespace soakwright
