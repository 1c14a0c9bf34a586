// SPDX-License-Identifier: GPL-3.0-or-later
// The tempering parameter of Hollomon and Jaffe over a whole curve.
//
// P = T (C + log10 t) / 1000 with T in kelvin (0 °C = 273.15 K) and t in hours (J. H. Hollomon, L. D. Jaffe,
// Trans. AIME 162, 1945). C is 20 for C-Mn and Cr-Mo steels (EN 13445-4:2021); a procedure may give another.
// A varying temperature is carried along: at every step what is gathered is converted to the step's
// temperature at equal P, then the step is added.
#pragma once

#include <optional>
#include <vector>

#include "core/measure/gathered_tempering.h"
#include "core/measure/guard.h"
#include "core/measure/traces/trace.h"

namespace soakwright {

struct Tempering {
  double parameter = 0.0;  ///< P, thousands
  double unknown_s = 0.0;  ///< time of the record in which nothing could be added, but for excluded time
};

/// Over the known time of each trace; nullopt where there is none.
std::vector<std::optional<Tempering>> temperings_of(const std::vector<Trace>& traces, Span record,
                                                    double constant);

/// One thermocouple's curve in one of several records: a trace, the time of its record, and its uncertainty
/// (null where the decision is simple).
struct CurvePart {
  const Trace* trace = nullptr;
  Span record;
  const Guard* guard = nullptr;
};
/// The parameter carried along over all parts, in order; with `sign` +1 or -1 as if every reading were off by
/// the whole of its U. Returns nullopt where nothing is known, or where `sign` is not 0 and no U is known.
std::optional<Tempering> tempering_over(const std::vector<CurvePart>& parts, double sign, double constant);

/// When the parameter carried along over all parts first passes `parameter` in the last of them; its first
/// step where it passed before. Returns nullopt where it never does.
std::optional<double> tempering_passes(const std::vector<CurvePart>& parts, double parameter,
                                       double constant);

/// Hours at `celsius` that are worth the parameter.
double equivalent_hours(double parameter, double celsius, double constant);
/// The parameter, thousands, of so many hours at `celsius`.
double parameter_of(double celsius, double hours, double constant);

/// A hold at one temperature.
struct LevelHold {
  double celsius = 0.0;
  double hours = 0.0;
};
/// The parameter of holds one after the other, carried along in their order; the order counts. nullopt where
/// there is none.
std::optional<double> carried_along(const std::vector<LevelHold>& holds, double constant);
/// The other way that is published: each hold is converted to hours at `celsius` at equal P by itself, and
/// the hours are added. Depends on `celsius`, not on the order. nullopt where there is no hold.
std::optional<double> referred_sum(const std::vector<LevelHold>& holds, double celsius, double constant);

/// Time of `record` in which the trace has no temperature, excluded or not.
double time_not_known(const Trace& trace, Span record);

}  // namespace soakwright
