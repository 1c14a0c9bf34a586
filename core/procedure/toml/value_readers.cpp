// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/toml/value_readers.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

#include "core/procedure/toml/value_problems.h"
#include "core/units/duration_text.h"
#include "core/units/number_text.h"
#include "core/units/quantity_text.h"

namespace soakwright {
namespace {

/// Text that `parse` understands; else the complaint that it is `not_one`.
template <typename Parse>
auto parsed(const FoundValue& found, Parse parse, ProblemWords (*not_one)(const FoundValue&))
    -> decltype(parse(std::string_view{})) {
  const auto* const written = found.value.as<std::string>();
  auto value = written ? parse(*written) : decltype(parse(std::string_view{})){};
  if (!value) return found.refuse(not_one(found));
  return value;
}

/// The number that is written, whole or decimal.
std::optional<double> number_in(const FoundValue& found) {
  if (const auto* whole = found.value.as<std::int64_t>()) return static_cast<double>(*whole);
  if (const auto* decimal = found.value.as<double>()) return *decimal;
  return std::nullopt;
}

}  // namespace

std::optional<std::string> text(const FoundValue& found) {
  if (const auto* written = found.value.as<std::string>()) return *written;
  return found.refuse(value_problems::not_a_text(found));
}

std::optional<std::string> name_text(const FoundValue& found) {
  const auto written = text(found);
  if (!written) return std::nullopt;
  const std::string_view name = trimmed(*written);
  if (name.empty()) return found.refuse(value_problems::empty_name(found));
  return std::string{name};
}

std::optional<std::string> column_name(const FoundValue& found) {
  if (const auto* column = found.value.as<std::int64_t>()) {
    if (*column < 1) return found.refuse(value_problems::column_before_first(found));
    return std::to_string(*column);
  }
  return name_text(found);
}

std::optional<double> number(const FoundValue& found) {
  if (const auto* whole = found.value.as<std::int64_t>()) return static_cast<double>(*whole);
  const auto* const decimal = found.value.as<double>();
  if (!decimal) return found.refuse(value_problems::not_a_number(found));
  if (!std::isfinite(*decimal)) return found.refuse(value_problems::not_finite(found));
  return *decimal;
}

std::optional<double> number_above_0(const FoundValue& found) {
  const auto value = number(found);
  if (value && !(*value > 0.0)) return found.refuse(value_problems::not_above_0(found));
  return value;
}

std::optional<int> count_from_1(const FoundValue& found) {
  const auto* const whole = found.value.as<std::int64_t>();
  if (!whole || *whole < 1 || *whole > std::numeric_limits<int>::max())
    return found.refuse(value_problems::not_a_count(found));
  return static_cast<int>(*whole);
}

std::optional<double> duration(const FoundValue& found) {
  const auto seconds = parsed(found, parse_duration, value_problems::not_a_duration);
  if (seconds && *seconds < 0.0) return found.refuse(value_problems::negative(found));
  return seconds;
}

std::optional<double> duration_above_0(const FoundValue& found) {
  const auto seconds = duration(found);
  if (seconds && *seconds == 0.0) return found.refuse(value_problems::not_above_0(found));
  return seconds;
}

std::optional<Thickness> thickness(const FoundValue& found) {
  const auto value = parsed(found, parse_thickness, value_problems::not_a_thickness);
  if (value && !(value->millimetres() > 0.0)) return found.refuse(value_problems::not_above_0(found));
  return value;
}

std::optional<double> place_m(const FoundValue& found) {
  return parsed(found, parse_length_m, value_problems::not_a_length);
}

std::optional<double> distance_m(const FoundValue& found) {
  const auto metres = place_m(found);
  if (metres && *metres < 0.0) return found.refuse(value_problems::negative(found));
  return metres;
}

std::optional<double> angle_deg(const FoundValue& found) {
  const auto plain =
      found.value.as<TomlArray>() || found.value.as<TomlTable>() ? std::nullopt : number_in(found);
  if (plain) return found.refuse(value_problems::angle_without_unit(found, *plain));
  return parsed(found, parse_angle_deg, value_problems::not_an_angle);
}

std::optional<std::string> path_value(const FoundValue& found) {
  const auto path = name_text(found);
  const auto is_control = [](char c) { return static_cast<unsigned char>(c) < 0x20U || c == 0x7F; };
  if (path && std::any_of(path->begin(), path->end(), is_control))
    return found.refuse(value_problems::control_character_in_path(found));
  return path;
}

std::optional<TemperatureDifference> plus_minus(const FoundValue& found) {
  const auto value = parsed(found, parse_plus_minus, value_problems::not_plus_minus);
  if (value && value->kelvin() < 0.0) return found.refuse(value_problems::negative(found));
  return value;
}

std::optional<TemperatureDifference> resolution(const FoundValue& found) {
  const auto value = parsed(found, parse_difference, value_problems::not_a_resolution);
  if (value && !(value->kelvin() > 0.0)) return found.refuse(value_problems::not_above_0(found));
  return value;
}

std::optional<CivilDate> date(const FoundValue& found) {
  if (const auto* day = found.value.as<CivilDate>()) return *day;
  return found.refuse(value_problems::not_a_date(found));
}

std::optional<LocalTime> local_time(const FoundValue& found) {
  if (const auto* time = found.value.as<LocalTime>()) return *time;
  const auto* const written = found.value.as<std::string>();
  const auto time = written ? parse_local_time(trimmed(*written)) : std::nullopt;
  // A date alone is the first instant of its day, which is not what "until 2 April" says.
  constexpr std::size_t kDateAlone = std::string_view{"2031-04-02"}.size();
  if (!time || trimmed(*written).size() <= kDateAlone)
    return found.refuse(value_problems::not_a_local_time(found));
  return time;
}

std::optional<Moment> moment(const FoundValue& found) {
  if (found.value.as<std::int64_t>() || found.value.as<double>()) {
    const auto seconds = number(found);
    return seconds ? std::optional<Moment>{*seconds} : std::nullopt;
  }
  // The same ways as local_time(), in a message that also names seconds.
  Complaints unheard{found.complaints.file()};
  const auto time = local_time(FoundValue{found.value, found.name, unheard});
  if (time) return *time;
  const auto* const written = found.value.as<std::string>();
  const auto printed = written ? parse_printed_time(*written) : std::nullopt;
  if (!printed) return found.refuse(value_problems::not_a_moment(found));
  return *printed;
}

std::optional<Temperature> TemperatureIn::operator()(const FoundValue& found) const {
  constexpr Temperature kCoupleLimit = Temperature::of_celsius(1e4);
  constexpr Temperature kAbsoluteZero = Temperature::of_celsius(-273.15);
  const auto value = number(found);
  if (!value) return std::nullopt;
  const Temperature point = Temperature::of(*value, unit);
  if (point < kAbsoluteZero || kCoupleLimit < point)
    return found.refuse(value_problems::no_such_temperature(found));
  return point;
}

std::optional<TemperatureDifference> DifferenceIn::operator()(const FoundValue& found) const {
  const auto value = number(found);
  if (!value) return std::nullopt;
  if (*value < 0.0) return found.refuse(value_problems::negative(found));
  return TemperatureDifference::of(*value, unit);
}

std::optional<HeatingRate> RateIn::operator()(const FoundValue& found) const {
  const auto value = number_above_0(found);
  if (!value) return std::nullopt;
  return HeatingRate::of(*value, unit);
}

}  // namespace soakwright
