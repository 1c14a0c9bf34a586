// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/readings/repeat_odds.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>

namespace soakwright {

namespace {

constexpr std::int64_t kFlatDigits = 8;  // over a block

/// The share of strong bends that normal noise of a deviation, in digits, makes at most, over all levels
/// between two digits and slopes from 0 to 1.3 digits a row: simulated, 20,000 readings of each.
struct NoiseShare {
  double strong;
  double deviation;
};
constexpr std::array<NoiseShare, 14> kShares = {{{0.0002, 0.15},
                                                 {0.0019, 0.20},
                                                 {0.0065, 0.25},
                                                 {0.0145, 0.30},
                                                 {0.0261, 0.35},
                                                 {0.0411, 0.40},
                                                 {0.0587, 0.45},
                                                 {0.0821, 0.50},
                                                 {0.1304, 0.60},
                                                 {0.1824, 0.70},
                                                 {0.2365, 0.80},
                                                 {0.3333, 1.00},
                                                 {0.5146, 1.50},
                                                 {0.6248, 2.00}}};

/// The least deviation, in digits, that makes so large a share of strong bends.
double deviation_of(double strong) {
  if (strong <= kShares.front().strong) return 0.0;
  for (std::size_t i = 1; i < kShares.size(); ++i)
    if (strong <= kShares[i].strong) {
      const NoiseShare& below = kShares[i - 1];
      const double part = (strong - below.strong) / (kShares[i].strong - below.strong);
      return below.deviation + part * (kShares[i].deviation - below.deviation);
    }
  return kShares.back().deviation;
}

constexpr double kLeastDeviation =
    0.35;                                // less, and a quiet level in the middle of a digit repeats for hours
constexpr std::size_t kGroupBends = 24;  // enough of them for a share
constexpr std::size_t kFewestBends = 30;
// The channel may be quieter at one time than at another: that of the quietest fifth counts.
constexpr double kQuietest = 0.2;
// On a ramp of a slow recorder the furnace itself bends the course.
constexpr double kQuickIntervalS = 60.0;

struct Pool {
  std::size_t bends = 0;
  std::size_t strong = 0;
  std::size_t pairs = 0;
  std::size_t equal = 0;
  std::vector<double> shares;  ///< of strong bends, group by group

  void take(const BendBlock& block) {
    bends += block.bends;
    strong += block.strong;
    pairs += block.pairs;
    equal += block.equal;
    group_bends_ += block.bends;
    group_strong_ += block.strong;
    if (group_bends_ < kGroupBends) return;
    shares.push_back(static_cast<double>(group_strong_) / static_cast<double>(group_bends_));
    group_bends_ = group_strong_ = 0;
  }

  /// The smaller of the whole's share, less twice its standard error, and of the quietest fifth's.
  [[nodiscard]] double share() {
    if (bends == 0) return 0.0;
    const double n = static_cast<double>(bends);
    const double all = static_cast<double>(strong) / n;
    double least = all - 2.0 * std::sqrt(all * (1.0 - all) / n);
    if (shares.empty()) return least;
    const auto at =
        shares.begin() + static_cast<std::ptrdiff_t>(kQuietest * static_cast<double>(shares.size()));
    std::nth_element(shares.begin(), at, shares.end());
    return std::min(least, *at);
  }

 private:
  std::size_t group_bends_ = 0;
  std::size_t group_strong_ = 0;
};

double surprise_of(Pool& pool) {
  const double deviation = deviation_of(pool.share());
  if (deviation < kLeastDeviation) return 0.0;
  const double at_most = std::erf(0.5 / std::sqrt(2.0) / deviation);
  const double equal = static_cast<double>(pool.equal);
  const double seen = (equal + 3.0 + 2.0 * std::sqrt(equal)) / static_cast<double>(pool.pairs + 3);
  return -std::log(std::min(std::max(at_most, seen), 1.0));
}

}  // namespace

std::vector<BendBlock> bend_blocks(const RowTable& table, const RowReadings& channel,
                                   const RowReadings* beside, const std::vector<RowRun>& long_runs) {
  const std::size_t rows = channel.rows();
  std::vector<BendBlock> blocks(rows / kBendBlock);
  auto run = long_runs.begin();
  const std::int64_t strong = kStrongDigits * channel.digit;
  for (std::size_t b = 0; b < blocks.size(); ++b) {
    BendBlock& block = blocks[b];
    const std::size_t begin = b * kBendBlock;
    while (run != long_runs.end() && run->last < begin) ++run;
    auto in_run = run;
    std::int64_t early = 0;
    std::int64_t late = 0;
    std::size_t known = 0;
    for (std::size_t row = begin; row < begin + kBendBlock; ++row) {
      if (!channel.known(row)) continue;
      ++known;
      (row < begin + kBendBlock / 2 ? early : late) += channel.units[row];
      while (in_run != long_runs.end() && in_run->last < row) ++in_run;
      const bool repeated = in_run != long_runs.end() && in_run->first <= row;
      if (row == 0 || !channel.known(row - 1) || table.joined[row - 1] == 0 || repeated) continue;
      ++block.pairs;
      if (channel.units[row] == channel.units[row - 1]) ++block.equal;
      if (row + 1 >= rows || !channel.known(row + 1) || table.joined[row] == 0) continue;
      const auto bend_of = [row](const RowReadings& one) {
        return std::int64_t{one.units[row - 1]} - 2 * std::int64_t{one.units[row]} + one.units[row + 1];
      };
      const std::int64_t own = bend_of(channel);
      std::int64_t size = std::abs(own);
      if (size >= strong && beside != nullptr && beside->known(row - 1) && beside->known(row) &&
          beside->known(row + 1))
        size = std::min(size, std::abs(own - bend_of(*beside)));
      ++block.bends;
      if (size >= strong) ++block.strong;
    }
    const auto half = static_cast<std::int64_t>(kBendBlock / 2);
    block.flat = known == kBendBlock && std::abs(late - early) <= kFlatDigits * channel.digit * half / 2;
  }
  return blocks;
}

double repeat_surprise(const std::vector<BendBlock>& blocks, std::size_t first, std::size_t last,
                       double interval_s) {
  Pool flat;
  Pool all;
  for (std::size_t b = 0; b < blocks.size(); ++b) {
    if ((b + 1) * kBendBlock > first && b * kBendBlock <= last) continue;
    all.take(blocks[b]);
    if (blocks[b].flat) flat.take(blocks[b]);
  }
  if (all.bends < kFewestBends) return 0.0;
  const double of_all = surprise_of(all);
  if (flat.bends >= kFewestBends) return std::min(of_all, surprise_of(flat));
  return interval_s <= kQuickIntervalS ? of_all : 0.0;
}

bool shows_noise(const std::vector<BendBlock>& blocks, std::size_t first, std::size_t last) {
  Pool pool;
  for (std::size_t b = first / kBendBlock; b < blocks.size() && b * kBendBlock <= last; ++b)
    pool.take(blocks[b]);
  if (pool.bends < kBendBlock / 2) return false;
  const double n = static_cast<double>(pool.bends);
  const double share = static_cast<double>(pool.strong) / n;
  return deviation_of(share - std::sqrt(share * (1.0 - share) / n)) >= kLeastDeviation;
}

}  // namespace soakwright
