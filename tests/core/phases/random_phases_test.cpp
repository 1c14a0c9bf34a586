// Phases of made-up runs against the corners that made them.
#include <algorithm>
#include <string>

#include <catch2/catch.hpp>

#include "core/phases/phases_of.h"
#include "tests/core/phases/made_run.h"

using namespace soakwright;

namespace {

/// The kinds as programmed; work left to cool by itself may have come to rest before the record ends.
bool kinds_agree(const made::Run& run, const std::vector<Phase>& phases) {
  if (phases.size() < run.parts.size()) return false;
  for (std::size_t i = 0; i < run.parts.size(); ++i)
    if (phases[i].kind != run.parts[i].kind) return false;
  return phases.size() == run.parts.size() || (phases.size() == run.parts.size() + 1 && run.natural_cooling &&
                                               phases.back().kind == Phase::Kind::idle);
}

}  // namespace

TEST_CASE("phases of 300 random runs are those of their programmes") {
  constexpr std::uint64_t kFirstSeed = 70001;
  constexpr std::size_t kRuns = 300;
  std::size_t kinds_right = 0;
  std::size_t corners = 0;
  std::size_t corners_right = 0;
  std::string wrong;
  for (std::uint64_t seed = kFirstSeed; seed < kFirstSeed + kRuns; ++seed) {
    const made::Run run = made::make_run(seed);
    const std::vector<Phase> phases = phases_of(run.record);
    if (!kinds_agree(run, phases)) {
      wrong += " kinds:" + std::to_string(seed);
      continue;
    }
    ++kinds_right;
    const double allowed_s = std::max(180.0, 2.0 * run.record.interval_s);
    for (std::size_t i = 0; i < run.corners.size(); ++i) {
      if (!run.corners[i].sharp) continue;
      ++corners;
      const double off_s =
          std::max({0.0, run.corners[i].from_s - phases[i].end_s, phases[i].end_s - run.corners[i].to_s});
      if (off_s <= allowed_s)
        ++corners_right;
      else
        wrong += " corner:" + std::to_string(seed);
    }
  }
  WARN("seeds from " << kFirstSeed << ": kinds right in " << kinds_right << " of " << kRuns
                     << ", corners within "
                     << "3 min or 2 intervals " << corners_right << " of " << corners << ";" << wrong);
  CHECK(kinds_right * 100 >= kRuns * 98);
  CHECK(corners_right * 1000 >= corners * 995);
}
