// SPDX-License-Identifier: GPL-3.0-or-later
// Lengths, angles and temperatures with their unit behind them, from the text of job and procedure files.
//
// Each gives nullopt if the text is not such a quantity or its unit is not known; signs are taken as they
// are, and whether a negative one makes sense is the caller's to say.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/units/temperature.h"
#include "core/units/thickness.h"

namespace soakwright {

/// `mm` or `in`.
std::optional<LengthUnit> parse_length_unit(std::string_view text);
/// `C`, `F` or `K`, also with deg or the degree sign before it.
std::optional<TemperatureUnit> parse_temperature_unit(std::string_view text);

/// `38 mm`, `1.5 in`.
std::optional<Thickness> parse_thickness(std::string_view text);
/// `300 mm`, `30 cm`, `4.6 m`, `12 in`, `15 ft`, in metres (1 ft is exactly 0.3048 m).
std::optional<double> parse_length_m(std::string_view text);
/// `90 deg`, also with the degree sign; `3 o'clock` is 90 deg, `12 o'clock` 0 deg.
std::optional<double> parse_angle_deg(std::string_view text);
/// `23.0 C`, a point on the scale.
std::optional<Temperature> parse_temperature(std::string_view text);
/// `0.1 C`, a difference.
std::optional<TemperatureDifference> parse_difference(std::string_view text);
/// A plus-minus value: `±1.1 C`, `+-1.1 C`, `1.1 C`.
std::optional<TemperatureDifference> parse_plus_minus(std::string_view text);

}  // namespace soakwright
