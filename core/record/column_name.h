// SPDX-License-Identifier: GPL-3.0-or-later
// What the name of a column says that the column is. A name decides nothing alone: column_kind.h also looks
// at the readings.
#pragma once

#include <string_view>

#include "core/units/column_content.h"

namespace soakwright {

struct ColumnName {
  enum class Says {
    nothing,        ///< a thermocouple's name, as far as anybody can tell
    set_point,      ///< a temperature that no thermocouple measures
    cold_junction,  ///< the same, of the recorder's terminals
    output,         ///< a share of heating power
    counter,        ///< a number for each row
    other,          ///< another quantity, an alarm, a text
  };
  Says says = Says::nothing;
  ColumnContent why = ColumnContent::none;  ///< set point, pressure …; none if the name says nothing
  /// The name can hardly mean anything else: "Set point 1", but not "SP-101" or "TC3 target plate".
  bool plain = false;
  bool spelled_out = false;         ///< "Set point", not "SP"
  bool names_thermocouple = false;  ///< "TC3", "thermocouple"
};

/// `name` without its unit.
ColumnName meaning_of_name(std::string_view name);

}  // namespace soakwright
