// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/heat/diffusivity.h"

#include <array>
#include <cmath>
#include <cstddef>

namespace soakwright {
namespace {

constexpr double kZero_k = 273.15;
constexpr double kGas_j_per_mol_k = 8.314462618;

struct PublishedPoint {
  double celsius, cm2_per_s;
};

/// F. R. Coe, Z. Moreton, 1969: hydrogen in ferritic steel. Not monotonic; straight lines of log D over 1/T
/// between the points.
constexpr std::array<PublishedPoint, 8> kCoeAndMoreton{{{60, 2.0e-7},
                                                        {155, 4.9e-5},
                                                        {210, 6.2e-5},
                                                        {250, 6.2e-5},
                                                        {310, 5.1e-5},
                                                        {350, 5.1e-5},
                                                        {395, 7.5e-5},
                                                        {650, 9.9e-5}}};

double between_points(double celsius) {
  std::size_t i = 0;
  while (i + 2 < kCoeAndMoreton.size() && celsius > kCoeAndMoreton[i + 1].celsius) ++i;
  const PublishedPoint& a = kCoeAndMoreton[i];
  const PublishedPoint& b = kCoeAndMoreton[i + 1];
  const double share = (1.0 / (celsius + kZero_k) - 1.0 / (a.celsius + kZero_k)) /
                       (1.0 / (b.celsius + kZero_k) - 1.0 / (a.celsius + kZero_k));
  return a.cm2_per_s * std::pow(b.cm2_per_s / a.cm2_per_s, share) * 1e-4;
}

double arrhenius(double d0_m2_per_s, double q_j_per_mol, double celsius) {
  return d0_m2_per_s * std::exp(-q_j_per_mol / (kGas_j_per_mol_k * (celsius + kZero_k)));
}

struct AtTemperature {
  double celsius;
  double operator()(PublishedDiffusivity which) const {
    return which == PublishedDiffusivity::coe_and_moreton_1969 ? between_points(celsius)
                                                               : arrhenius(4.57e-7, 22'300.0, celsius);
  }
  double operator()(const ConstantDiffusivity& law) const { return law.m2_per_s; }
  double operator()(const ArrheniusDiffusivity& law) const {
    return arrhenius(law.d0_m2_per_s, law.q_j_per_mol, celsius);
  }
};

}  // namespace

Diffusivity published_diffusivity(PublishedDiffusivity which) {
  Diffusivity diffusivity;
  diffusivity.law = which;
  switch (which) {
    case PublishedDiffusivity::coe_and_moreton_1969:
      diffusivity.low = Temperature::of_celsius(kCoeAndMoreton.front().celsius);
      diffusivity.high = Temperature::of_celsius(kCoeAndMoreton.back().celsius);
      break;
    case PublishedDiffusivity::eurofer_97:
      diffusivity.low = Temperature::of(376.0, TemperatureUnit::kelvin);
      diffusivity.high = Temperature::of(724.0, TemperatureUnit::kelvin);
      break;
  }
  return diffusivity;
}

double diffusivity_at(const DiffusivityLaw& law, double celsius) {
  return std::visit(AtTemperature{celsius}, law);
}

}  // namespace soakwright
