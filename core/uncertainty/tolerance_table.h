// SPDX-License-Identifier: GPL-3.0-or-later
// How far a new thermocouple may be off by its class: the published tables, as half-widths in kelvin.
//
// IEC 60584-1 (class 1, class 2) and ASTM E230 (special, standard): the greater of a fixed value and a share
// of |t|, t in °C; types R and S of class 1 run as a line beyond 1100 °C.
#pragma once

#include <limits>
#include <optional>
#include <string>

#include "core/procedure/job/job.h"

namespace soakwright {

/// A half-width that may depend on the temperature, and where it is said to hold.
struct HalfWidth {
  double fixed_k = 0.0;
  double share = 0.0;  ///< of |t|: 0.004 is 0.4 %
  std::optional<double>
      line_from_c;  ///< beyond it fixed_k + share · (t − line_from_c), in place of the greater
  double from_c = -std::numeric_limits<double>::infinity();
  double to_c = std::numeric_limits<double>::infinity();

  /// At `celsius`; nullopt if the table says nothing.
  [[nodiscard]] std::optional<double> at(double celsius) const;
  bool operator==(const HalfWidth&) const = default;
};

/// One contribution to a thermocouple's uncertainty, and what gives its size; core/wording has the words.
struct BudgetSource {
  enum class Kind { thermocouple, calibration, extension_cable, recorder, resolution };
  Kind kind = Kind::thermocouple;
  HalfWidth size;                                          ///< ±a, or the step q of a digital reading
  std::optional<ThermocoupleType> type = {};               ///< where the size is of a published table
  Tolerance::Kind class_of_type = Tolerance::Kind::fixed;  ///< of that table
  bool of_recorder = false;                                ///< a resolution that the job gives, not the log
  bool operator==(const BudgetSource&) const = default;
};

/// Nullopt if the class does not exist for the type (B: only class 2 and standard). `kind` is not `fixed`.
std::optional<HalfWidth> published_tolerance(ThermocoupleType type, Tolerance::Kind kind);

/// "K"; "class 1".
std::string type_name(ThermocoupleType type);
std::string class_name(Tolerance::Kind kind);

}  // namespace soakwright
