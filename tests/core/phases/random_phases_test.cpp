// SPDX-License-Identifier: GPL-3.0-or-later
// Phases of made-up runs against the corners that made them. The seed is new at each run.
#include <algorithm>
#include <string>

#include <catch2/catch.hpp>

#include "core/phases/course.h"
#include "tests/core/phases/drawn_seed.h"
#include "tests/core/phases/made_run.h"

using namespace soakwright;

namespace {

#if defined(SOAKWRIGHT_SANITIZED)
constexpr std::size_t kRuns = 40;  // ten times slower there, and there it is the memory that is looked at
#else
constexpr std::size_t kRuns = 200;
#endif

/// The kinds as programmed; work left to cool by itself may have come to rest before the record ends.
bool kinds_agree(const made::Run& run, const std::vector<Phase>& phases) {
  if (phases.size() < run.parts.size()) return false;
  for (std::size_t i = 0; i < run.parts.size(); ++i)
    if (phases[i].kind != run.parts[i].kind) return false;
  return phases.size() == run.parts.size() || (phases.size() == run.parts.size() + 1 && run.natural_cooling &&
                                               phases.back().kind == Phase::Kind::idle);
}

}  // namespace

TEST_CASE("phases of random runs are those of their programmes, corners within 3 min or 2 intervals") {
  const std::uint64_t seed = made::draw_seed();
  std::size_t kinds_right = 0;
  std::size_t corners = 0;
  std::size_t corners_right = 0;
  std::string wrong;
  for (std::uint64_t i = 0; i < kRuns; ++i) {
    const made::Run run = made::make_run(seed + i);
    const std::vector<Phase> phases = course_of(run.record).phases;
    if (!kinds_agree(run, phases)) {
      wrong += " kinds:" + std::to_string(seed + i);
      continue;
    }
    ++kinds_right;
    const double allowed_s = std::max(180.0, 2.0 * run.record.interval_s);
    for (std::size_t c = 0; c < run.corners.size(); ++c) {
      if (!run.corners[c].sharp) continue;
      ++corners;
      const double off_s =
          std::max({0.0, run.corners[c].from_s - phases[c].end_s, phases[c].end_s - run.corners[c].to_s});
      if (off_s <= allowed_s)
        ++corners_right;
      else
        wrong += " corner:" + std::to_string(seed + i);
    }
  }
  WARN(made::seed_text(seed) << ": kinds right in " << std::to_string(kinds_right) << " of "
                             << std::to_string(kRuns) << ", corners " << std::to_string(corners_right)
                             << " of " << std::to_string(corners) << wrong);
  CHECK(kinds_right * 100 >= kRuns * 95);
  CHECK(corners_right * 100 >= corners * 98);
}
