// SPDX-License-Identifier: GPL-3.0-or-later
// Units as people write them above a column, and the name that is left without them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace soakwright {

enum class SaidUnit {
  celsius,
  fahrenheit,
  kelvin,
  millivolt,
  seconds,
  minutes,
  hours,
  days,
  milliseconds,
  other,  ///< a unit of something else: kW, bar, % …
};

/// The unit that `text` is, if it is one and nothing else; UTF-8. `bare_letters` lets C, F and K alone count.
std::optional<SaidUnit> unit_of(std::string_view text, bool bare_letters = true);

bool measures_time(SaidUnit unit);
/// A temperature, or the emf that stands for one.
bool measures_temperature(SaidUnit unit);
/// Names that a time column goes by: time, elapsed, date, t, seconds …
bool is_time_name(std::string_view name);

struct NameAndUnit {
  std::string name;
  std::string unit;  ///< as written, without brackets
};
/// "TC1 (°C)", "TC1 [degC]", "TC1 °C", "TC1/C" … into "TC1" and the unit; no unit: the whole is the name.
NameAndUnit name_and_unit(std::string_view header);

/// ASCII letters in lower case.
std::string lower_case(std::string_view text);

}  // namespace soakwright
