// SPDX-License-Identifier: GPL-3.0-or-later
// What a column of a log holds where it is not evaluated as a thermocouple.
#pragma once

#include <string>

namespace soakwright {

enum class ColumnContent {
  none,  ///< nothing that speaks against a thermocouple
  set_point,
  cold_junction,
  emf_without_cold_junction,
  other_unit,  ///< in a unit of no temperature
  text,
  empty,
  counter,  ///< a number for each row
  output,   ///< a share of heating power
  pressure,
  heat_flux,
  alarm,
  other_quantity,
};

/// Why a column is not evaluated.
struct ColumnReason {
  ColumnContent content = ColumnContent::none;
  std::string unit = {};  ///< of `other_unit`, as the log writes it
  bool operator==(const ColumnReason&) const = default;
};

}  // namespace soakwright
