// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/readings/noise_shape.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/phases/robust.h"

namespace soakwright {

namespace {

// In a group no larger, the middle of the others is the channel itself much of the time, or one other's
// noise.
constexpr std::size_t kSmallGroup = 3;
// Of white noise two cells in three are higher or lower than both neighbours, about half by more than this
// share of the deviation.
constexpr double kTurnDeviations = 0.3;
constexpr double kTurnsShare = 0.36;
constexpr double kManyTurns = 0.45;
// Below its middle it scatters by this share of the whole at least: weld runs only make it hotter. The
// quantile lies that many deviations of a normal distribution below.
constexpr double kBelowShare = 0.6;
constexpr double kBelowShareOfMany = 0.35;  // less will do where it turns that often
constexpr double kBelowQuantile = 0.2;
constexpr double kBelowDeviations = 0.8416;
// One in ten lies 1.3 deviations above the middle and bends by 3.1; a curve that is flat in most places and
// steep in some has far more.
constexpr double kTailQuantile = 0.1;
constexpr double kTailDeviations = 3.3;
constexpr double kBendDeviations = 8.0;
constexpr std::size_t kFewCells = 64;  // of which chance makes a few weld runs look like noise more easily
constexpr double kTailOfFew = 2.4;
constexpr double kTurnsPerSkew = 0.2;  // a skew upwards takes as much from the share of turns of few cells
// Weld runs are few and hot, the rest is at the foot: skewed upwards. That of 40 normal values is 0.4 by
// chance.
constexpr double kMostSkew = 0.75;
// Of many cells without a tail fewer turns will do: the deviation itself may be found too large.
constexpr double kTurnsOfMany = 0.2;
constexpr double kTailOfMany = 2.0;

struct Scattered {
  std::vector<double> off;    ///< from the middle of the block
  std::vector<double> bends;  ///< twice a cell less its neighbours
  std::size_t turns = 0;
};

struct PlaceOnLine {
  std::size_t cell = 0;
  double value = 0.0;
};

/// What is left of the block beside the others; in a small group beside its own slope.
std::vector<PlaceOnLine> places_of(const ExaminedChannel& examined, std::size_t first, std::size_t last) {
  const bool alone = examined.sampled->evaluated <= kSmallGroup;
  std::vector<PlaceOnLine> places;
  for (std::size_t k = first; k < last; ++k) {
    if (alone ? examined.known(k) && examined.explained[k] == 0 : examined.comparable(k))
      places.push_back({k, alone ? examined.celsius(k) : examined.apart_k(k)});
  }
  if (!alone || places.size() < 4) return places;
  std::vector<double> slopes;
  const std::size_t half = places.size() / 2;
  for (std::size_t i = 0; i + half < places.size(); ++i)
    slopes.push_back((places[i + half].value - places[i].value) /
                     static_cast<double>(places[i + half].cell - places[i].cell));
  const double slope = median_of(std::move(slopes));
  for (PlaceOnLine& place : places) place.value -= slope * static_cast<double>(place.cell - first);
  return places;
}

void add_block(const std::vector<PlaceOnLine>& places, double least_turn_k, Scattered& scattered) {
  std::vector<double> values;
  for (const PlaceOnLine& place : places) values.push_back(place.value);
  const double middle = median_of(std::move(values));
  for (const PlaceOnLine& place : places) scattered.off.push_back(place.value - middle);
  for (std::size_t i = 1; i + 1 < places.size(); ++i) {
    if (places[i + 1].cell - places[i - 1].cell != 2) continue;
    const double before = places[i].value - places[i - 1].value;
    const double after = places[i].value - places[i + 1].value;
    scattered.bends.push_back(before + after);
    if (before * after > 0.0 && std::min(std::abs(before), std::abs(after)) > least_turn_k) ++scattered.turns;
  }
}

double skew_of(const std::vector<double>& values) {
  double sum = 0.0;
  for (const double value : values) sum += value;
  const double mean = sum / static_cast<double>(values.size());
  double square = 0.0;
  double cube = 0.0;
  for (const double value : values) {
    square += (value - mean) * (value - mean);
    cube += (value - mean) * (value - mean) * (value - mean);
  }
  const double n = static_cast<double>(values.size());
  return square > 0.0 ? (cube / n) / std::pow(square / n, 1.5) : 0.0;
}

double quantile(std::vector<double>& values, double share) {
  const auto at =
      values.begin() + static_cast<std::ptrdiff_t>(share * static_cast<double>(values.size() - 1));
  std::nth_element(values.begin(), at, values.end());
  return *at;
}

}  // namespace

bool is_noise(const ExaminedChannel& examined, std::size_t first, std::size_t last, std::size_t block,
              double deviation_k) {
  Scattered scattered;
  for (std::size_t k = first; k < std::min(last, examined.cells()); k += block)
    add_block(places_of(examined, k, std::min({k + block, last, examined.cells()})),
              kTurnDeviations * deviation_k, scattered);
  if (scattered.bends.empty()) return false;
  const double turns = static_cast<double>(scattered.turns) / static_cast<double>(scattered.bends.size());
  const double below = -quantile(scattered.off, kBelowQuantile) / (kBelowDeviations * deviation_k);
  const double tail = quantile(scattered.off, 1.0 - kTailQuantile) / deviation_k;
  const bool few = scattered.off.size() < kFewCells;
  const double least_turns = !few && tail <= kTailOfMany ? kTurnsOfMany : kTurnsShare;
  const bool turns_often = turns >= kManyTurns || (!few && tail <= kTailOfMany);
  const double skew = skew_of(scattered.off);
  if (few && turns - kTurnsPerSkew * std::max(skew, 0.0) < kTurnsShare) return false;
  return turns >= least_turns && below >= (turns_often ? kBelowShareOfMany : kBelowShare) &&
         tail <= (few ? kTailOfFew : kTailDeviations) && skew <= kMostSkew &&
         -quantile(scattered.bends, kTailQuantile) <= kBendDeviations * deviation_k &&
         quantile(scattered.bends, 1.0 - kTailQuantile) <= kBendDeviations * deviation_k;
}

}  // namespace soakwright
