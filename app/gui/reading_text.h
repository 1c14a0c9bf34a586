// Moments and temperatures as a person reads them on the screen, in the report's unit and on the log's clock.
#pragma once

#include <QString>
#include <optional>

#include "core/record/record.h"
#include "core/units/temperature.h"

namespace soakwright::gui {

/// "612.4 °C"; a dash where there is none.
QString temperature_text(std::optional<double> celsius, TemperatureUnit unit);
/// "2 Apr 2031 11:02:20" where the log has a clock, else "5:02:20" since the first sample.
QString moment_text(const Record& record, double at_s);
/// Hours, minutes, seconds; hours beyond 24 as they are.
QString elapsed_text(double seconds);
QString unit_sign(TemperatureUnit unit);
/// "2 Apr", English like everything the core says.
QString day_text(const CivilDate& date);

}  // namespace soakwright::gui
