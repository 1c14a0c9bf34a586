// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/suspect_unheated.h"

#include <algorithm>

namespace soakwright {

namespace {

constexpr std::size_t kFewestOthers = 3;
constexpr std::size_t kFewestColdCells = 20;
constexpr double kOthersHeatK = 100.0;
constexpr double kStillShare = 0.03;  // of what the least of the others moves
constexpr double kMostStillK = 6.0;
constexpr double kUnheatedNoises = 8.0;
constexpr double kNoiseShare = 0.1;
// Below the coldest that any place is on a winter's day, and still going down as the others go up.
constexpr double kUnheatedColdK = 40.0;
constexpr double kUnheatedHotK = 50.0;
constexpr double kFallK = 20.0;
constexpr double kColdBesideHotShare = 0.7;

struct HeatExtent {
  double low_c = 0.0;
  double high_c = 0.0;
  std::size_t cells = 0;
  [[nodiscard]] double range_k() const { return high_c - low_c; }
};

HeatExtent extent_of(const SampledTrace& trace) {
  HeatExtent extent;
  for (std::size_t k = 0; k < trace.known.size(); ++k) {
    if (trace.known[k] == 0) continue;
    extent.low_c = extent.cells == 0 ? trace.celsius[k] : std::min(extent.low_c, trace.celsius[k]);
    extent.high_c = extent.cells == 0 ? trace.celsius[k] : std::max(extent.high_c, trace.celsius[k]);
    ++extent.cells;
  }
  return extent;
}

}  // namespace

std::vector<Suspect> find_never_moving(const ExaminedChannel& examined) {
  const SampledRecord& sampled = *examined.sampled;
  const HeatExtent own = extent_of(sampled.traces[examined.trace]);
  if (own.cells < std::max(kFewestColdCells, sampled.cells() / 2)) return {};
  std::size_t others = 0;
  double least_k = 0.0;
  for (std::size_t i = 0; i < sampled.evaluated; ++i) {
    if (i == examined.trace) continue;
    const HeatExtent other = extent_of(sampled.traces[i]);
    if (other.cells < kFewestColdCells) continue;
    least_k = others == 0 ? other.range_k() : std::min(least_k, other.range_k());
    ++others;
  }
  if (others < kFewestOthers || least_k < kOthersHeatK) return {};
  const double noise_k = std::min(kUnheatedNoises * examined.noise_k, kNoiseShare * least_k);
  if (own.range_k() > std::max(std::min(kStillShare * least_k, kMostStillK), noise_k)) return {};
  Suspect suspect;
  suspect.channel = examined.index();
  suspect.code = Suspect::Code::stuck;
  suspect.from_s = sampled.begin_s;
  suspect.to_s = sampled.end_s;
  suspect.evidence = {.kind = SuspectEvidence::Kind::never_moves,
                      .low_c = own.low_c,
                      .high_c = own.high_c,
                      .change_k = least_k};
  return {suspect};
}

std::vector<Suspect> find_below_ambient(const ExaminedChannel& examined) {
  const double ambient_c = examined.course->ambient_c;
  if (examined.lowest_c > ambient_c - kUnheatedColdK) return {};
  std::size_t cold = 0;
  std::size_t beside_hot = 0;
  std::size_t first = examined.cells();
  std::size_t last = 0;
  double highest_c = 0.0;
  std::size_t coldest = 0;
  for (std::size_t k = 0; k < examined.cells(); ++k) {
    if (!examined.comparable(k) || examined.celsius(k) > ambient_c - kUnheatedColdK) continue;
    if (first == examined.cells()) {
      first = coldest = k;
      highest_c = examined.celsius(k);
    }
    last = k;
    ++cold;
    highest_c = std::max(highest_c, examined.celsius(k));
    if (examined.celsius(k) < examined.celsius(coldest)) coldest = k;
    if (examined.others_c[k] >= ambient_c + kUnheatedHotK) ++beside_hot;
  }
  if (cold < kFewestColdCells ||
      static_cast<double>(beside_hot) < kColdBesideHotShare * static_cast<double>(cold))
    return {};
  // A value that a recorder shows for an open circuit stands still, and does not fall as the others rise.
  if (highest_c - examined.celsius(coldest) < kFallK) return {};
  if (examined.others_c[coldest] <= examined.others_c[first]) return {};
  Suspect suspect;
  suspect.channel = examined.index();
  suspect.code = Suspect::Code::reversed;
  suspect.from_s = examined.time_s(first);
  suspect.to_s = examined.time_s(last);
  suspect.evidence = {.kind = SuspectEvidence::Kind::below_ambient,
                      .value_c = examined.celsius(coldest),
                      .others_c = examined.others_c[coldest]};
  return {suspect};
}

}  // namespace soakwright
