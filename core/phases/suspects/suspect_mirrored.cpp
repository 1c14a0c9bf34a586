// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/suspect_mirrored.h"

#include <algorithm>
#include <cmath>

namespace soakwright {

namespace {

// Where the others are this far above ambient it can be told; no work or air is colder than ambient by the
// second.
constexpr double kHotK = 50.0;
constexpr double kColdK = 40.0;
// The recorder's own terminals, about which it turns, are up to half of this warmer or colder than ambient.
constexpr double kTurnedAboutK = 70.0;
constexpr double kTurnedAboutShare = 0.25;
constexpr std::size_t kFewestMirroredCells = 3;
constexpr double kNearlyAll = 0.8;
// It was right at first where it stood apart from the others by no more than this share of what they had
// risen.
constexpr double kRightFirstShare = 0.4;

enum class Seen { nothing, right, mirrored };

Seen seen_in(const ExaminedChannel& examined, std::size_t cell) {
  if (!examined.comparable(cell)) return Seen::nothing;
  const double others = examined.others_c[cell] - examined.course->ambient_c;
  const double own = examined.celsius(cell) - examined.course->ambient_c;
  if (others < kHotK) return Seen::nothing;
  const bool mirrored =
      own < -kColdK && std::abs(own + others) <= std::max(kTurnedAboutK, kTurnedAboutShare * others);
  return mirrored ? Seen::mirrored : Seen::right;
}

/// The longest run of cells [first, last] that starts and ends mirrored and is nearly all so.
struct MirroredRows {
  std::size_t first = 0;
  std::size_t last = 0;
  std::size_t mirrored = 0;
};

MirroredRows longest_mirrored(const std::vector<Seen>& seen) {
  MirroredRows best;
  MirroredRows now;
  std::size_t told = 0;
  for (std::size_t k = 0; k < seen.size(); ++k) {
    if (seen[k] == Seen::nothing) continue;
    if (seen[k] == Seen::mirrored) {
      if (now.mirrored == 0) {
        now.first = k;
        told = 0;
      }
      ++now.mirrored;
      now.last = k;
    }
    ++told;
    if (static_cast<double>(now.mirrored) < kNearlyAll * static_cast<double>(told))
      now = {};
    else if (now.mirrored > best.mirrored)
      best = now;
  }
  return best;
}

}  // namespace

std::vector<Suspect> find_mirrored(const ExaminedChannel& examined, const std::vector<SuddenStep>& steps) {
  if (examined.lowest_c >= examined.course->ambient_c - kColdK) return {};  // never so cold
  std::vector<Seen> seen;
  seen.reserve(examined.cells());
  for (std::size_t k = 0; k < examined.cells(); ++k) seen.push_back(seen_in(examined, k));
  const MirroredRows longest = longest_mirrored(seen);
  if (longest.mirrored < kFewestMirroredCells) return {};
  Suspect suspect;
  suspect.channel = examined.index();
  suspect.code = Suspect::Code::reversed;
  suspect.from_s = examined.sampled->begin_s;
  suspect.to_s = examined.sampled->end_s;
  const auto right_in = [&](std::size_t first, std::size_t last) {
    return std::count(seen.begin() + static_cast<std::ptrdiff_t>(first),
                      seen.begin() + static_cast<std::ptrdiff_t>(last), Seen::right) > 0;
  };
  if (right_in(0, longest.first)) {
    suspect.from_s = examined.time_s(longest.first);
    for (const SuddenStep& step : steps)
      if (step.before < longest.first && step.after + kFewestMirroredCells >= longest.first &&
          step.jump_k < 0.0 &&
          std::abs(step.before_k) <=
              kRightFirstShare * (examined.others_c[step.before] - examined.course->ambient_c))
        suspect.from_s = step.onset_s;
  }
  if (right_in(longest.last + 1, seen.size())) suspect.to_s = examined.time_s(longest.last);
  suspect.evidence = {.kind = SuspectEvidence::Kind::below_ambient,
                      .value_c = examined.celsius(longest.first),
                      .others_c = examined.others_c[longest.first]};
  return {suspect};
}

}  // namespace soakwright
