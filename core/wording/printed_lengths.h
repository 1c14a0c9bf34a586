// SPDX-License-Identifier: GPL-3.0-or-later
// Thicknesses and lengths for a reader: in a report in °F the inches or feet stand beside the millimetres or
// metres.
#pragma once

#include <string>

#include "core/units/temperature.h"
#include "core/units/thickness.h"

namespace soakwright {

/// "38 mm"; in °F "1.5 in (38.1 mm)", and "38 mm (1.496 in)" where millimetres are the round figure.
std::string thickness_text(Thickness thickness, TemperatureUnit unit);

/// "4.6 m"; in °F "15 ft (4.572 m)", and "4.6 m (15.092 ft)" where metres are the round figure.
std::string length_text(double metres, TemperatureUnit unit);

/// "in" is no word after "in": "inches", "mm".
std::string length_unit_text(LengthUnit unit);

}  // namespace soakwright
