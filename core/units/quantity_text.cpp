// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/quantity_text.h"

#include <utility>

#include "core/units/number_text.h"

namespace soakwright {
namespace {

constexpr std::string_view kDegreeSign = "\u00b0";
constexpr std::string_view kPlusMinus = "\u00b1";

template <typename T, std::size_t size>
std::optional<T> named(const std::pair<std::string_view, T> (&table)[size], std::string_view name) {
  for (const auto& [known, value] : table)
    if (known == name) return value;
  return std::nullopt;
}

struct MetresPerUnit {
  double times;
  double by;
};

constexpr std::pair<std::string_view, LengthUnit> kThicknessUnits[] = {{"mm", LengthUnit::millimetre},
                                                                       {"in", LengthUnit::inch}};
constexpr std::pair<std::string_view, TemperatureUnit> kTemperatureUnits[] = {
    {"C", TemperatureUnit::celsius}, {"F", TemperatureUnit::fahrenheit}, {"K", TemperatureUnit::kelvin}};
/// Whole numbers on both sides, so that 300 mm is the double nearest to 0.3.
constexpr std::pair<std::string_view, MetresPerUnit> kMetresPer[] = {
    {"mm", {1, 1000}}, {"cm", {1, 100}}, {"m", {1, 1}}, {"in", {254, 10000}}, {"ft", {3048, 10000}}};

}  // namespace

std::optional<LengthUnit> parse_length_unit(std::string_view text) { return named(kThicknessUnits, text); }

std::optional<TemperatureUnit> parse_temperature_unit(std::string_view text) {
  if (text.starts_with("deg"))
    text = trimmed(text.substr(3));
  else if (text.starts_with(kDegreeSign))
    text = trimmed(text.substr(kDegreeSign.size()));
  return named(kTemperatureUnits, text);
}

std::optional<Thickness> parse_thickness(std::string_view text) {
  const auto found = split_number_and_unit(text);
  const auto unit = found ? parse_length_unit(found->unit) : std::nullopt;
  if (!unit) return std::nullopt;
  return Thickness::of(found->number, *unit);
}

std::optional<double> parse_length_m(std::string_view text) {
  const auto found = split_number_and_unit(text);
  const auto unit = found ? named(kMetresPer, found->unit) : std::nullopt;
  if (!unit) return std::nullopt;
  return found->number * unit->times / unit->by;
}

std::optional<double> parse_angle_deg(std::string_view text) {
  const auto found = split_number_and_unit(text);
  if (found && (found->unit == "o'clock" || found->unit == "o\xE2\x80\x99"
                                                           "clock")) {
    // Twelve is on top, three is a quarter of the way round.
    if (!(found->number > 0.0 && found->number <= 12.0)) return std::nullopt;
    return found->number == 12.0 ? 0.0 : found->number * 30.0;
  }
  if (!found || (found->unit != "deg" && found->unit != kDegreeSign)) return std::nullopt;
  return found->number;
}

std::optional<Temperature> parse_temperature(std::string_view text) {
  const auto found = split_number_and_unit(text);
  const auto unit = found ? parse_temperature_unit(found->unit) : std::nullopt;
  if (!unit) return std::nullopt;
  return Temperature::of(found->number, *unit);
}

std::optional<TemperatureDifference> parse_difference(std::string_view text) {
  const auto found = split_number_and_unit(text);
  const auto unit = found ? parse_temperature_unit(found->unit) : std::nullopt;
  if (!unit) return std::nullopt;
  return TemperatureDifference::of(found->number, *unit);
}

std::optional<TemperatureDifference> parse_plus_minus(std::string_view text) {
  text = trimmed(text);
  for (const std::string_view sign : {kPlusMinus, std::string_view{"+-"}, std::string_view{"+/-"}}) {
    if (!text.starts_with(sign)) continue;
    text = trimmed(text.substr(sign.size()));
    // One sign is enough: what follows is a size.
    if (text.starts_with('-') || text.starts_with('+')) return std::nullopt;
    break;
  }
  return parse_difference(text);
}

}  // namespace soakwright
