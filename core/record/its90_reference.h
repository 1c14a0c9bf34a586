// SPDX-License-Identifier: GPL-3.0-or-later
// Thermocouple emf and temperature by the ITS-90 reference functions (its90_coefficients.h).
#pragma once

#include <optional>

#include "core/procedure/job/job.h"

namespace soakwright {

struct EmfRange {
  double from_c = 0.0;
  double to_c = 0.0;
};
/// Where the reference function is defined and single-valued: type B from 42.2 C on.
EmfRange emf_range(ThermocoupleType type);

/// Emf in mV against a reference junction at 0 C; nothing outside the function's own range.
std::optional<double> emf_mv(ThermocoupleType type, double celsius);
/// The slope of the function, mV per kelvin. Only inside its range.
double emf_slope_mv_per_k(ThermocoupleType type, double celsius);

/// The temperature in C whose emf is `mv`, to better than 0.001 K; nullopt if there is none in
/// emf_range(). `near_c` is where to look first.
std::optional<double> celsius_of_emf(ThermocoupleType type, double mv, double near_c);

char letter_of(ThermocoupleType type);

}  // namespace soakwright
