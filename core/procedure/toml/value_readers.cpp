// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/toml/value_readers.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

#include <fmt/format.h>

#include "core/units/duration_text.h"
#include "core/units/number_text.h"
#include "core/units/quantity_text.h"

namespace soakwright {
namespace {

/// Text that `parse` understands; else `help`.
template <typename Parse>
auto parsed(const FoundValue& found, Parse parse, const char* help) -> decltype(parse(std::string_view{})) {
  const auto* const written = found.value.as<std::string>();
  if (!written) return found.refuse_kind(help);
  auto value = parse(*written);
  if (!value) return found.refuse_kind(help);
  return value;
}

std::nullopt_t refuse_not_above_0(const FoundValue& found) { return found.refuse_kind("give more than 0"); }

/// The number that is written, whole or decimal.
std::optional<double> number_in(const FoundValue& found) {
  if (const auto* whole = found.value.as<std::int64_t>()) return static_cast<double>(*whole);
  if (const auto* decimal = found.value.as<double>()) return *decimal;
  return std::nullopt;
}

constexpr const char* kMoment =
    "write a local time as the log prints it (\"2031-04-02 13:10\", \"13:10:00\", \"+1 d 00:10:00\", elapsed "
    "\"0:09:30\"), or the seconds from its first sample";

}  // namespace

std::nullopt_t refuse_negative(const FoundValue& found) { return found.refuse_kind("give 0 or more"); }

std::optional<std::string> text(const FoundValue& found) {
  if (const auto* written = found.value.as<std::string>()) return *written;
  return found.refuse_kind("write text in double quotes");
}

std::optional<std::string> name_text(const FoundValue& found) {
  const auto written = text(found);
  if (!written) return std::nullopt;
  const std::string_view name = trimmed(*written);
  if (name.empty()) return found.refuse("is empty", "give a name");
  return std::string{name};
}

std::optional<std::string> column_name(const FoundValue& found) {
  if (const auto* column = found.value.as<std::int64_t>()) {
    if (*column < 1) return found.refuse_kind("columns are counted from 1");
    return std::to_string(*column);
  }
  return name_text(found);
}

std::optional<double> number(const FoundValue& found) {
  if (const auto* whole = found.value.as<std::int64_t>()) return static_cast<double>(*whole);
  const auto* const decimal = found.value.as<double>();
  if (!decimal) return found.refuse_kind("write a plain number");
  if (!std::isfinite(*decimal)) return found.refuse("is not a finite number", "write a plain number");
  return *decimal;
}

std::optional<double> number_above_0(const FoundValue& found) {
  const auto value = number(found);
  if (value && !(*value > 0.0)) return refuse_not_above_0(found);
  return value;
}

std::optional<int> count_from_1(const FoundValue& found) {
  const auto* const whole = found.value.as<std::int64_t>();
  if (!whole || *whole < 1 || *whole > std::numeric_limits<int>::max())
    return found.refuse_kind("write a whole number from 1");
  return static_cast<int>(*whole);
}

std::optional<double> duration(const FoundValue& found) {
  const auto seconds =
      parsed(found, parse_duration, R"(write a duration: "90 s", "95 min", "1.5 h", "1 h 35 min")");
  if (seconds && *seconds < 0.0) return refuse_negative(found);
  return seconds;
}

std::optional<double> duration_above_0(const FoundValue& found) {
  const auto seconds = duration(found);
  if (seconds && *seconds == 0.0) return refuse_not_above_0(found);
  return seconds;
}

std::optional<Thickness> thickness(const FoundValue& found) {
  const auto value = parsed(found, parse_thickness, R"(write a thickness in mm or in: "38 mm", "1.5 in")");
  if (value && !(value->millimetres() > 0.0)) return refuse_not_above_0(found);
  return value;
}

std::optional<double> place_m(const FoundValue& found) {
  return parsed(found, parse_length_m,
                R"(write a length in mm, cm, m, in or ft: "1.2 m", "300 mm", "15 ft")");
}

std::optional<double> distance_m(const FoundValue& found) {
  const auto metres = place_m(found);
  if (metres && *metres < 0.0) return refuse_negative(found);
  return metres;
}

std::optional<double> angle_deg(const FoundValue& found) {
  constexpr const char* kHelp = R"(write an angle or a position on the clock: "90 deg", "3 o'clock")";
  const auto plain =
      found.value.as<TomlArray>() || found.value.as<TomlTable>() ? std::nullopt : number_in(found);
  if (plain)
    return found.refuse_kind(
        fmt::format(R"(write `{0} = "{1} deg"`, or a position on the clock: `{0} = "3 o'clock"`)", found.name,
                    number_text(*plain)));
  return parsed(found, parse_angle_deg, kHelp);
}

std::optional<std::string> path_text(const FoundValue& found) {
  const auto path = name_text(found);
  const auto is_control = [](char c) { return static_cast<unsigned char>(c) < 0x20U || c == 0x7F; };
  if (path && std::any_of(path->begin(), path->end(), is_control))
    return found.refuse(R"(has a control character in it: in double quotes \t, \n and the like are escapes)",
                        R"(write the path with / or in single quotes: 'C:\test\new.csv')");
  return path;
}

std::optional<TemperatureDifference> plus_minus(const FoundValue& found) {
  const auto value = parsed(found, parse_plus_minus, "write a plus-minus value with its unit: \"±1.1 C\"");
  if (value && value->kelvin() < 0.0) return refuse_negative(found);
  return value;
}

std::optional<TemperatureDifference> resolution(const FoundValue& found) {
  const auto value =
      parsed(found, parse_difference, R"(write the recorder's last digit with its unit: "0.1 C")");
  if (value && !(value->kelvin() > 0.0)) return refuse_not_above_0(found);
  return value;
}

std::optional<CivilDate> date(const FoundValue& found) {
  if (const auto* day = found.value.as<CivilDate>()) return *day;
  return found.refuse_kind("write a date without quotes: 2031-09-30");
}

std::optional<LocalTime> local_time(const FoundValue& found) {
  if (const auto* time = found.value.as<LocalTime>()) return *time;
  const auto* const written = found.value.as<std::string>();
  const auto time = written ? parse_local_time(trimmed(*written)) : std::nullopt;
  // A date alone is the first instant of its day, which is not what "until 2 April" says.
  constexpr std::size_t kDateAlone = std::string_view{"2031-04-02"}.size();
  if (!time || trimmed(*written).size() <= kDateAlone)
    return found.refuse_kind("write a local time of the log: \"2031-04-02 13:10\"");
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
  if (!printed) return found.refuse_kind(kMoment);
  return *printed;
}

std::optional<Temperature> TemperatureIn::operator()(const FoundValue& found) const {
  constexpr Temperature kCoupleLimit = Temperature::of_celsius(1e4);
  constexpr Temperature kAbsoluteZero = Temperature::of_celsius(-273.15);
  const auto value = number(found);
  if (!value) return std::nullopt;
  const Temperature point = Temperature::of(*value, unit);
  if (point < kAbsoluteZero || kCoupleLimit < point)
    return found.refuse_kind("no such temperature: give one in the file's unit");
  return point;
}

std::optional<TemperatureDifference> DifferenceIn::operator()(const FoundValue& found) const {
  const auto value = number(found);
  if (!value) return std::nullopt;
  if (*value < 0.0) return refuse_negative(found);
  return TemperatureDifference::of(*value, unit);
}

std::optional<HeatingRate> RateIn::operator()(const FoundValue& found) const {
  const auto value = number_above_0(found);
  if (!value) return std::nullopt;
  return HeatingRate::of(*value, unit);
}

}  // namespace soakwright
