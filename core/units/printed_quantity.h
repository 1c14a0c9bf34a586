// SPDX-License-Identifier: GPL-3.0-or-later
// Quantities as people read them: the one form that each kind has on the screen, in the report and in
// messages.
//
// A space before the unit, a true minus sign (U+2212), no minus before a zero, the same on every machine
// whatever its locale. Text that a program reads (JSON, TOML) is made by number_text.h instead.
#pragma once

#include <cstdint>
#include <string>

#include "core/units/local_time.h"
#include "core/units/quantity.h"

namespace soakwright {

/// The unit of the report and the digits of the log that it is about.
struct QuantityFormat {
  TemperatureUnit unit = TemperatureUnit::celsius;
  int temperature_digits = 1;  ///< behind the point of readings and differences, in `unit`
  int second_digits = 0;       ///< behind the point of the seconds
};

/// What was measured. Temperatures and differences have the log's digits; rates one; durations the log's, one
/// more below 10 s; shares up to three; counts are grouped by commas. `611.6 °C`, `143.4 °C/h`, `1 h 35 min`,
/// `45 s`, `0.52`, `1,585`.
std::string printed(const Quantity& quantity, const QuantityFormat& format);
/// What was specified: at most `digits` decimals (shares three), none that are zero. `590 °C`, `144.74 °C/h`,
/// `1 h 35 min`.
std::string printed_limit(const Quantity& quantity, const QuantityFormat& format, int digits = 2);
/// With `digits` decimals; of durations and shares, those that are zero are left out.
std::string printed_with(const Quantity& quantity, const QuantityFormat& format, int digits);
/// The number alone, in the unit of the report, with exactly `digits` decimals; not for durations.
std::string printed_number(const Quantity& quantity, const QuantityFormat& format, int digits);

/// The decimals that printed() gives `quantity`.
int usual_digits(const Quantity& quantity, const QuantityFormat& format);
/// The number that is printed for `quantity`: °F where the report is in °F; seconds; a plain number.
double in_unit(const Quantity& quantity, TemperatureUnit unit);
/// "°C" or "°F".
std::string degree_text(TemperatureUnit unit);

/// "1 h 35 min 12 s", from 100 h on "4 d 5 h"; `digits` behind the point of the second, none of them zero
/// alone.
std::string printed_duration(double seconds, int digits = 0);
/// `value` with `digits` decimals and a true minus sign; never "−0".
std::string decimal_text(double value, int digits);
/// At most `digits` decimals, none that are zero.
std::string short_text(double value, int digits);
/// "38.1 mm": a tenth is the finest that anybody measures on a pipe.
std::string mm_text(double millimetres);
/// "1,234,567"
std::string count_text(std::int64_t count);
/// "2031-04-02"
std::string date_text(CivilDate date);

}  // namespace soakwright
