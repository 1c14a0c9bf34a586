// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/suspect_spike.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <functional>
#include <iterator>
#include <optional>

#include "core/system/parallel_for.h"

namespace soakwright {

namespace {

constexpr double kLeastK = 20.0;
constexpr double kJumpLeastK = 30.0;
constexpr double kUsualSteps = 12.0;  // times the usual step from one row to the next
// The heat of a weld run fades with a minute or more, a junction in steel follows it: what comes and goes
// within this time is neither. Between rows further apart it must be faster than that.
constexpr double kQuickS = 40.0;
constexpr double kFastKPerS = 3.0;
constexpr std::size_t kMostReadings = 3;
constexpr double kSpikeLeftShare = 0.2;  // of the spike that may be left of it
constexpr std::size_t kRowsBefore = 3;   // tell how fast the channel itself moves
constexpr double kAtOnceShare = 0.7;
constexpr double kCalmShare = 0.5;
constexpr std::size_t kFewSpikes = 3;  // more, and the channel is noisy
constexpr std::size_t kToAndFro = 3;   // jumps up, and jumps down
constexpr double kAlikeShare = 0.75;
constexpr double kOthersShare = 0.5;
constexpr double kFurnaceShare = 0.25;  // of a spike, that the others move the same way
constexpr double kAllShare = 0.8;       // of the others have the very spike: the recorder's
// One jump that stays: more than a weld run heats at once, more than any quench takes from steel.
constexpr double kGreatRiseK = 200.0;
constexpr double kGreatFallK = 100.0;
constexpr double kGreatS = 5.0;
constexpr double kStaysS = 600.0;  // the heat of a weld run has gone by then
constexpr double kStaysShare = 0.5;

struct Jump {
  std::size_t row = 0;  ///< from this one to the next
  double change_k = 0.0;
};

/// The middle of the steps between neighbouring rows, of a few thousand.
double usual_step_k(const RowReadings& channel) {
  const std::size_t stride = std::max<std::size_t>(channel.rows() / 2000, 1);
  std::vector<std::int64_t> steps;
  for (std::size_t row = 0; row + 1 < channel.rows(); row += stride)
    if (channel.known(row) && channel.known(row + 1))
      steps.push_back(std::abs(std::int64_t{channel.units[row + 1]} - std::int64_t{channel.units[row]}));
  if (steps.empty()) return 0.0;
  const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
  std::nth_element(steps.begin(), middle, steps.end());
  return channel.kelvin(*middle);
}

/// Whether two neighbours may be further apart than `reach`, or one of them missing; certainly not, if not.
/// Differences wrap, and every one is compared, so that a processor works on several at once.
bool may_be_apart(const std::int32_t* units, std::size_t steps, std::uint32_t reach) {
  std::uint32_t any = 0;
  for (std::size_t i = 0; i < steps; ++i) {
    const auto change = static_cast<std::uint32_t>(units[i + 1]) - static_cast<std::uint32_t>(units[i]);
    any |= static_cast<std::uint32_t>(change + reach > 2 * reach);
  }
  return any != 0;
}

std::vector<Jump> jumps_of(const RowTable& table, const RowReadings& channel, double least_k) {
  constexpr std::size_t kStepsTogether = 64;
  std::vector<Jump> jumps;
  const auto least = static_cast<std::int64_t>(std::ceil(least_k / channel.kelvin_per_unit));
  const auto reach =
      static_cast<std::uint32_t>(std::clamp<std::int64_t>(least - 1, 0, std::int64_t{1} << 30U));
  const std::int32_t* units = channel.units.data();
  for (std::size_t first = 0; first + 1 < channel.rows(); first += kStepsTogether) {
    const std::size_t end = std::min(first + kStepsTogether, channel.rows() - 1);
    // Most blocks have no such step.
    if (!may_be_apart(units + first, end - first, reach)) continue;
    for (std::size_t row = first; row < end; ++row) {
      const std::int64_t change = std::int64_t{units[row + 1]} - std::int64_t{units[row]};
      if (change < least && -change < least) continue;
      if (!channel.known(row) || !channel.known(row + 1) || table.joined[row] == 0) continue;
      const double change_k = channel.kelvin(change);
      const double seconds = table.time_s(row + 1) - table.time_s(row);
      if (seconds > kQuickS && std::abs(change_k) < kFastKPerS * seconds) continue;
      jumps.push_back({row, change_k});
    }
  }
  return jumps;
}

/// Whether most of the other evaluated channels make the same jump.
bool others_jump(const RowTable& table, std::size_t place, const Jump& jump) {
  std::size_t all = 0;
  std::size_t same = 0;
  for (std::size_t i = 0; i < table.channels.size(); ++i) {
    const RowReadings& other = table.channels[i];
    if (i == place || !other.evaluated || !other.known(jump.row) || !other.known(jump.row + 1)) continue;
    ++all;
    const double change_k =
        other.kelvin(std::int64_t{other.units[jump.row + 1]} - std::int64_t{other.units[jump.row]});
    if (change_k * jump.change_k > 0.0 && std::abs(change_k) >= kOthersShare * std::abs(jump.change_k))
      ++same;
  }
  return all > 0 && 2 * same > all;
}

struct Spike {
  std::size_t first = 0;
  std::size_t last = 0;
  double height_k = 0.0;
};

/// The spike that this jump begins and a later one ends.
std::optional<Spike> spike_at(const RowTable& table, const RowReadings& channel,
                              const std::vector<Jump>& jumps, std::size_t i) {
  const std::size_t before = jumps[i].row;
  for (std::size_t j = i + 1; j < jumps.size() && jumps[j].row - before <= kMostReadings; ++j) {
    if (jumps[j].change_k * jumps[i].change_k > 0.0) continue;
    const std::size_t after = jumps[j].row + 1;
    double least_k = std::abs(jumps[i].change_k);
    bool whole = true;
    for (std::size_t row = before + 1; row < after; ++row) {
      whole = whole && channel.known(row) && table.joined[row] != 0;
      const double away =
          channel.kelvin(std::int64_t{channel.units[row]} - std::int64_t{channel.units[before]});
      least_k = away * jumps[i].change_k > 0.0 ? std::min(least_k, std::abs(away)) : 0.0;
    }
    // Against where the channel was going: heat that fades beneath a second weld run is no way back.
    const double course_k = before >= kRowsBefore && channel.known(before - kRowsBefore)
                                ? channel.kelvin(std::int64_t{channel.units[before]} -
                                                 std::int64_t{channel.units[before - kRowsBefore]}) /
                                      static_cast<double>(kRowsBefore) * static_cast<double>(after - before)
                                : 0.0;
    const double back_k =
        channel.kelvin(std::int64_t{channel.units[after]} - std::int64_t{channel.units[before]});
    if (!whole || std::abs(back_k - course_k) > kSpikeLeftShare * least_k ||
        std::abs(back_k) > 2.0 * kSpikeLeftShare * least_k ||
        least_k < kAtOnceShare * std::max(std::abs(jumps[i].change_k), std::abs(jumps[j].change_k)))
      continue;
    const auto calm = [&](std::size_t row) {
      return !channel.known(row) || !channel.known(row + 1) ||
             channel.kelvin(std::abs(std::int64_t{channel.units[row + 1]} -
                                     std::int64_t{channel.units[row]})) < kCalmShare * least_k;
    };
    if ((before > 0 && !calm(before - 1)) || (after + 1 < channel.rows() && !calm(after))) continue;
    return Spike{before + 1, after - 1, jumps[i].change_k};
  }
  return std::nullopt;
}

struct Wild {
  std::vector<Jump> jumps;
  std::vector<Spike> spikes;
  double usual_k = 0.0;
};

Wild wild_of(const RowTable& table, const RowReadings& channel) {
  Wild wild;
  wild.usual_k = usual_step_k(channel);
  wild.jumps = jumps_of(table, channel, std::max(kLeastK, kUsualSteps * wild.usual_k));
  for (std::size_t i = 0; i < wild.jumps.size(); ++i)
    if (const auto spike = spike_at(table, channel, wild.jumps, i)) wild.spikes.push_back(*spike);
  return wild;
}

/// Whether the others dip (rise) there too, most of them more slowly: that is the furnace.
bool furnace_does(const RowTable& table, const std::vector<Wild>& all, std::size_t place,
                  const Spike& spike) {
  std::size_t moved = 0;
  std::size_t spiked = 0;
  std::size_t others = 0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const RowReadings& other = table.channels[i];
    if (i == place || !other.evaluated || !other.known(spike.first - 1) || !other.known(spike.last)) continue;
    ++others;
    const double change_k =
        other.kelvin(std::int64_t{other.units[spike.last]} - std::int64_t{other.units[spike.first - 1]});
    if (change_k * spike.height_k > 0.0 && std::abs(change_k) >= kFurnaceShare * std::abs(spike.height_k))
      ++moved;
    if (std::any_of(all[i].spikes.begin(), all[i].spikes.end(),
                    [&](const Spike& same) { return same.first == spike.first; }))
      ++spiked;
  }
  return 2 * moved > others && static_cast<double>(spiked) < kAllShare * static_cast<double>(others);
}

/// How many jumps up have a jump down of their size: a contact fails and closes alike, heat comes faster than
/// it goes.
std::size_t to_and_fro(std::vector<double> up, std::vector<double> down) {
  std::sort(up.begin(), up.end(), std::greater<>());
  std::sort(down.begin(), down.end(), std::greater<>());
  std::size_t pairs = 0;
  for (std::size_t i = 0; i < std::min(up.size(), down.size()); ++i)
    if (std::min(up[i], down[i]) >= kAlikeShare * std::max(up[i], down[i])) ++pairs;
  return pairs;
}

/// Whether the channel is still up ten minutes after the jump, where the record reaches so far.
bool stays_up(const RowTable& table, const RowReadings& channel, const Jump& jump) {
  const double later_s = table.time_s(jump.row) + kStaysS;
  std::size_t row = jump.row + 1;
  while (row + 1 < channel.rows() && table.time_s(row) < later_s) ++row;
  while (row > jump.row && !channel.known(row)) --row;
  if (table.time_s(row) < later_s - 0.5 * kStaysS) return false;
  const double left_k =
      channel.kelvin(std::int64_t{channel.units[row]} - std::int64_t{channel.units[jump.row]});
  return left_k >= kStaysShare * jump.change_k;
}

std::vector<Suspect> wild_readings(const RowTable& table, const std::vector<Wild>& all, std::size_t place) {
  const RowReadings& channel = table.channels[place];
  const auto& [jumps, every_spike, usual_k] = all[place];
  if (jumps.empty()) return {};
  std::vector<Spike> spikes;
  std::copy_if(every_spike.begin(), every_spike.end(), std::back_inserter(spikes),
               [&](const Spike& spike) { return !furnace_does(table, all, place, spike); });
  std::vector<double> up;
  std::vector<double> down;
  double largest_k = 0.0;
  std::size_t first = channel.rows();
  std::size_t last = 0;
  for (const Jump& jump : jumps) {
    if (std::abs(jump.change_k) < std::max(kJumpLeastK, kUsualSteps * usual_k) ||
        others_jump(table, place, jump))
      continue;
    (jump.change_k > 0.0 ? up : down).push_back(std::abs(jump.change_k));
    if (std::abs(jump.change_k) > std::abs(largest_k)) largest_k = jump.change_k;
    first = std::min(first, jump.row);
    last = std::max(last, jump.row + 1);
  }
  std::vector<Suspect> found;
  Suspect suspect;
  suspect.channel = channel.channel;
  if (spikes.size() > kFewSpikes || to_and_fro(up, down) > kToAndFro) {
    if (up.empty() && down.empty()) return {};
    suspect.code = Suspect::Code::noisy;
    suspect.from_s = table.time_s(first);
    suspect.to_s = table.time_s(last);
    suspect.evidence = {.kind = SuspectEvidence::Kind::frequent_jumps,
                        .change_k = largest_k,
                        .count = up.size() + down.size()};
    return {suspect};
  }
  for (std::size_t i = 0; i < jumps.size(); ++i) {
    const Jump& jump = jumps[i];
    const double seconds = table.time_s(jump.row + 1) - table.time_s(jump.row);
    const bool great = jump.change_k >= kGreatRiseK || jump.change_k <= -kGreatFallK;
    const bool of_spike = std::any_of(spikes.begin(), spikes.end(), [&](const Spike& spike) {
      return jump.row + 1 >= spike.first && jump.row <= spike.last;
    });
    if (!great || seconds > kGreatS || of_spike || others_jump(table, place, jump)) continue;
    if (jump.change_k > 0.0 && !stays_up(table, channel, jump)) continue;
    suspect.code = Suspect::Code::detached;
    suspect.from_s = table.time_s(jump.row + 1);
    suspect.to_s = table.time_s(table.rows() - 1);
    for (std::size_t j = i + 1; j < jumps.size(); ++j)
      if (jumps[j].change_k * jump.change_k < 0.0 &&
          std::abs(jumps[j].change_k) >= 0.5 * std::abs(jump.change_k)) {
        suspect.to_s = table.time_s(jumps[j].row);
        break;
      }
    suspect.evidence = {.kind = SuspectEvidence::Kind::sudden_step,
                        .change_k = jump.change_k,
                        .seconds = suspect.to_s - suspect.from_s};
    found.push_back(suspect);
    break;
  }
  suspect.code = Suspect::Code::spike;
  for (const Spike& spike : spikes) {
    suspect.from_s = table.time_s(spike.first);
    suspect.to_s = table.time_s(spike.last);
    suspect.evidence = {.kind = SuspectEvidence::Kind::spike,
                        .value_c = table.celsius(place, spike.first),
                        .change_k = spike.height_k,
                        .count = spike.last - spike.first + 1};
    found.push_back(suspect);
  }
  return found;
}

}  // namespace

std::vector<Suspect> find_spikes_and_jumps(const RowTable& table) {
  std::vector<Wild> all(table.channels.size());
  parallel_for(all.size(), all.size() * table.rows(),
               [&](std::size_t i) { all[i] = wild_of(table, table.channels[i]); });
  std::vector<Suspect> suspects;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const std::vector<Suspect> more = wild_readings(table, all, i);
    suspects.insert(suspects.end(), more.begin(), more.end());
  }
  return suspects;
}

}  // namespace soakwright
