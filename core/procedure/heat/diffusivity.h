// SPDX-License-Identifier: GPL-3.0-or-later
// The diffusivity of hydrogen in the steel as the job chooses it: a published one by name, or one that a
// person typed, with the range of temperature in which it holds.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "core/units/temperature.h"

namespace soakwright {

enum class PublishedDiffusivity { coe_and_moreton_1969, eurofer_97 };

inline constexpr PublishedDiffusivity kPublishedDiffusivities[] = {PublishedDiffusivity::coe_and_moreton_1969,
                                                                   PublishedDiffusivity::eurofer_97};

// heat_table_checks.cpp
/// As the job and the report name it.
std::string_view published_name(PublishedDiffusivity which);
/// Returns nullopt for any other name.
std::optional<PublishedDiffusivity> published_named(std::string_view name);

struct ConstantDiffusivity {
  double m2_per_s = 0.0;
  bool operator==(const ConstantDiffusivity&) const = default;
};

/// D = D0 exp(-Q/RT).
struct ArrheniusDiffusivity {
  double d0_m2_per_s = 0.0;
  double q_j_per_mol = 0.0;
  bool operator==(const ArrheniusDiffusivity&) const = default;
};

using DiffusivityLaw = std::variant<PublishedDiffusivity, ConstantDiffusivity, ArrheniusDiffusivity>;

struct Diffusivity {
  DiffusivityLaw law = PublishedDiffusivity::coe_and_moreton_1969;
  Temperature low, high;              ///< where it holds; ends included
  std::optional<std::string> source;  ///< of one that a person typed
  bool operator==(const Diffusivity&) const = default;
};

/// With the range that was published.
Diffusivity published_diffusivity(PublishedDiffusivity which);

/// D in m²/s. `celsius` must be within the range: nothing is extrapolated here.
double diffusivity_at(const DiffusivityLaw& law, double celsius);

}  // namespace soakwright
