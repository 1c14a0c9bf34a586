// SPDX-License-Identifier: GPL-3.0-or-later
// What part of the hydrogen is left in a plate or a cylinder after it diffused out over a curve.
//
// J. Crank, The Mathematics of Diffusion: a plane sheet of thickness 2l with both faces free, a long cylinder
// of radius a, hydrogen evenly spread at the start and none at the surface from then on. With a diffusivity
// that changes with the time the series take F = ∫D dt / l², F = ∫D dt / a². Nothing here decides on work:
// published diffusivities differ more than twentyfold.
#pragma once

#include "core/measure/traces/trace.h"
#include "core/procedure/heat/diffusivity.h"
#include "core/procedure/job/job.h"

namespace soakwright {

/// Shares of what was there at the start.
struct HydrogenShare {
  double mean = 1.0;    ///< of the whole section
  double centre = 1.0;  ///< in its middle
};

/// At F from 0 on; `half_m` in F is half the thickness or half the diameter.
HydrogenShare hydrogen_left(HydrogenShape shape, double fourier);

/// ∫D dt over part of a curve, and the known time that it could not take: nothing is extrapolated.
struct Diffused {
  double integral_m2 = 0.0;
  double counted_s = 0.0;
  double below_s = 0.0, above_s = 0.0;  ///< colder, hotter than the diffusivity holds
  double unknown_s = 0.0;               ///< no temperature is known, or a person excluded it
};
Diffused diffused_over(const Trace& trace, Span time, const Diffusivity& diffusivity);

}  // namespace soakwright
