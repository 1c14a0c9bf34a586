// SPDX-License-Identifier: GPL-3.0-or-later
// The tempering parameter of Hollomon and Jaffe over a whole curve.
//
// P = T (20 + log10 t) / 1000 with T in kelvin (0 °C = 273.15 K) and t in hours (J. H. Hollomon, L. D. Jaffe,
// Trans. AIME 162, 1945; C = 20 as in EN 13445-4:2021). A varying temperature is carried along: at every step
// what is gathered is converted to the step's temperature at equal P, then the step is added.
#pragma once

#include <optional>
#include <vector>

#include "core/measure/guard.h"
#include "core/measure/trace.h"

namespace soakwright {

struct Tempering {
  double parameter = 0.0;  ///< P, thousands
  double unknown_s = 0.0;  ///< time of the record in which nothing could be added
};

/// Over the known time of each trace; nothing where there is none.
std::vector<std::optional<Tempering>> temperings_of(const std::vector<Trace>& traces, Span record);

/// One thermocouple's curve in one of several records: a trace, the time of its record, and its uncertainty
/// (null where the decision is simple).
struct CurvePart {
  const Trace* trace = nullptr;
  Span record;
  const Guard* guard = nullptr;
};
/// The parameter carried along over all parts, in order; with `sign` +1 or -1 as if every reading were off by
/// the whole of its U. Nothing where nothing is known, or where `sign` is not 0 and no U is known.
std::optional<Tempering> tempering_over(const std::vector<CurvePart>& parts, double sign);

/// When the trace's parameter first passes `parameter`; nothing where it never does.
std::optional<double> tempering_passes(const Trace& trace, double parameter);

/// Hours at `celsius` that are worth the parameter.
double equivalent_hours(double parameter, double celsius);

}  // namespace soakwright
