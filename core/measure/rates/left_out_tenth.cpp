// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/rates/left_out_tenth.h"

#include <algorithm>

namespace soakwright {
namespace {

using Sums = window_slopes::Sums<window_slopes::Wide>;

Sums less(Sums sums, const Sums& other) {
  sums.n -= other.n;
  sums.t -= other.t;
  sums.tt -= other.tt;
  sums.v -= other.v;
  sums.tv -= other.tv;
  return sums;
}

}  // namespace

std::size_t tenth_of(std::size_t readings) { return std::max<std::size_t>(1, readings / 10); }

LeftOutTenth::LeftOutTenth(const IntegerSamples& samples, std::size_t first, std::size_t end)
    : samples_(samples), first_(first), running_(end - first + 1), offender_(first) {
  running_[0].origin = samples.tick(first);
  for (std::size_t i = first; i < end; ++i) {
    running_[i - first + 1] = running_[i - first];
    running_[i - first + 1].add(samples.tick(i), samples.unit(i) - samples.unit(first));
  }
}

bool LeftOutTenth::beyond(std::size_t first, std::size_t end, double sign, double bound_c_per_h) {
  constexpr std::size_t kFewestLeft = 3;
  const std::size_t count = end - first;
  const std::size_t tenth = count < tenth_of(count) + kFewestLeft ? 0 : tenth_of(count);
  const double scale = sign * window_slopes::units_per_tick_to_c_per_h(samples_);
  const auto before = [&](std::size_t sample) -> const Sums& { return running_[sample - first_]; };
  const Sums all = less(before(end), before(first));
  const auto beyond_without = [&](std::size_t from) {
    Sums left = less(all, less(before(from + tenth), before(from)));
    left.move_origin(samples_.tick(first));
    return left.numerator() / left.shape().denominator * scale > bound_c_per_h;
  };
  const std::size_t last = tenth == 0 ? first : end - tenth;
  if (!beyond_without(std::clamp(offender_, first, last))) return false;
  for (std::size_t from = first; from <= last; ++from)
    if (!beyond_without(from)) {
      offender_ = from;
      return false;
    }
  return true;
}

}  // namespace soakwright
