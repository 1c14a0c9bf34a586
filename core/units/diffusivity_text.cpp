// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/diffusivity_text.h"

#include <cmath>
#include <utility>

#include "core/units/number_text.h"
#include "core/units/quantity_text.h"

namespace soakwright {
namespace {

/// How many of the unit make one of ours: whole numbers, so that 5.1e-5 cm²/s is the double nearest
/// to 5.1e-9.
std::optional<double> divided(std::string_view text,
                              std::initializer_list<std::pair<std::string_view, double>> units) {
  const auto found = split_number_and_unit(text);
  if (!found) return std::nullopt;
  for (const auto& [unit, per_ours] : units)
    if (found->unit == unit) return found->number / per_ours;
  return std::nullopt;
}

}  // namespace

std::optional<double> parse_diffusivity(std::string_view text) {
  return divided(text, {{"m2/s", 1.0},
                        {"m\u00b2/s", 1.0},
                        {"cm2/s", 1e4},
                        {"cm\u00b2/s", 1e4},
                        {"mm2/s", 1e6},
                        {"mm\u00b2/s", 1e6}});
}

std::optional<double> parse_activation_energy(std::string_view text) {
  const auto kilo = divided(text, {{"kJ/mol", 1.0}});
  return kilo ? std::optional{*kilo * 1000.0} : divided(text, {{"J/mol", 1.0}});
}

std::string diffusivity_text(double m2_per_s) {
  const double cm2 = m2_per_s * 1e4;
  if (!(cm2 > 0.0)) return "0 cm\u00b2/s";
  int power = static_cast<int>(std::floor(std::log10(cm2)));
  double mantissa = std::round(cm2 / std::pow(10.0, power) * 100.0) / 100.0;
  if (mantissa >= 10.0) {
    mantissa /= 10.0;
    ++power;
  }
  return number_text(mantissa) + "e" + std::to_string(power) + " cm\u00b2/s";
}

}  // namespace soakwright
