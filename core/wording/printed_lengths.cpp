// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/printed_lengths.h"

#include <cmath>

#include "core/units/printed_quantity.h"

namespace soakwright {
namespace {

constexpr double kMetresPerFoot = 0.3048;
constexpr double kRound = 16.0;  // inches are read in sixteenths

bool is_round(double value) { return std::fabs(value * kRound - std::round(value * kRound)) < 1e-6; }

std::string in_both(const std::string& metric, const std::string& customary, bool customary_first) {
  return customary_first ? customary + " (" + metric + ")" : metric + " (" + customary + ")";
}

}  // namespace

std::string thickness_text(Thickness thickness, TemperatureUnit unit) {
  std::string metric = short_text(thickness.millimetres(), 2);
  metric += " mm";
  if (unit != TemperatureUnit::fahrenheit) return metric;
  const double inches = thickness.in(LengthUnit::inch);
  return in_both(metric, short_text(inches, 4) + " in", is_round(inches));
}

std::string length_text(double metres, TemperatureUnit unit) {
  std::string metric = short_text(metres, 3);
  metric += " m";
  if (unit != TemperatureUnit::fahrenheit) return metric;
  const double feet = metres / kMetresPerFoot;
  return in_both(metric, short_text(feet, 3) + " ft", is_round(feet));
}

std::string length_unit_text(LengthUnit unit) { return unit == LengthUnit::inch ? "inches" : "mm"; }

}  // namespace soakwright
