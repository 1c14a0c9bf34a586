// SPDX-License-Identifier: GPL-3.0-or-later
// Moments and temperatures as a person reads them on the screen, in the report's unit and on the log's clock.
#pragma once

#include <QString>
#include <optional>

#include "core/record/record.h"
#include "core/units/temperature.h"

namespace soakwright::gui {

/// "612.4 °C"; a dash where there is none.
QString temperature_text(std::optional<double> celsius, TemperatureUnit unit);
/// As the recorder showed it: "2 Apr 2031 11:02:20", "11:02:20", "+1 d 00:10:00" or elapsed "5:02:20".
QString moment_text(const Record& record, double at_s);
QString unit_sign(TemperatureUnit unit);
/// "2 Apr", English like everything the core says.
QString day_text(const CivilDate& date);

}  // namespace soakwright::gui
