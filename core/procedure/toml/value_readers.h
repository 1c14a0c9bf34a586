// SPDX-License-Identifier: GPL-3.0-or-later
// How single values of our TOML files are read: numbers, texts, durations, temperatures, moments. Each is a
// way to read in the sense of table_reader.h.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/procedure/job/job.h"
#include "core/procedure/toml/table_reader.h"
#include "core/procedure/toml/value_problems.h"
#include "core/units/quantity_text.h"
#include "core/units/temperature.h"
#include "core/units/thickness.h"
#include "core/units/word_table.h"

namespace soakwright {

/// Free text, which may be empty.
std::optional<std::string> text(const FoundValue& found);
/// Text that names something: not empty, without spaces at its ends.
std::optional<std::string> name_text(const FoundValue& found);
/// The path of a file.
std::optional<std::string> path_value(const FoundValue& found);
/// The name of a column: text, or the column's number in the file.
std::optional<std::string> column_name(const FoundValue& found);

/// A finite number.
std::optional<double> number(const FoundValue& found);
std::optional<double> number_above_0(const FoundValue& found);
std::optional<int> count_from_1(const FoundValue& found);

/// Seconds, not negative.
std::optional<double> duration(const FoundValue& found);
std::optional<double> duration_above_0(const FoundValue& found);

std::optional<Thickness> thickness(const FoundValue& found);
/// Metres; a place may lie on either side of the work's zero, a distance may not be negative.
std::optional<double> place_m(const FoundValue& found);
std::optional<double> distance_m(const FoundValue& found);
std::optional<double> angle_deg(const FoundValue& found);
/// A plus-minus value of a thermocouple, cable or recorder.
std::optional<TemperatureDifference> plus_minus(const FoundValue& found);
std::optional<TemperatureDifference> resolution(const FoundValue& found);

std::optional<CivilDate> date(const FoundValue& found);
std::optional<LocalTime> local_time(const FoundValue& found);
std::optional<Moment> moment(const FoundValue& found);

/// Temperatures, differences and rates written as plain numbers in the file's own unit.
struct InUnit {
  TemperatureUnit unit = TemperatureUnit::celsius;
};
struct TemperatureIn : InUnit {
  std::optional<Temperature> operator()(const FoundValue& found) const;
};
/// Not negative.
struct DifferenceIn : InUnit {
  std::optional<TemperatureDifference> operator()(const FoundValue& found) const;
};
/// Above 0.
struct RateIn : InUnit {
  std::optional<HeatingRate> operator()(const FoundValue& found) const;
};

/// One of a few words.
template <typename T>
struct OneOfWords {
  std::vector<std::pair<std::string, T>> words;
  std::optional<T> operator()(const FoundValue& found) const {
    const auto* const word = found.value.as<std::string>();
    std::vector<std::string> known;
    for (const auto& [name, value] : words) {
      if (word && *word == name) return value;
      known.push_back(name);
    }
    return found.refuse(value_problems::unknown_word(found, known));
  }
};
/// One of the words for a unit; any other way to write that unit has an error of its own.
template <typename T>
struct UnitWord : OneOfWords<T> {
  std::optional<T> operator()(const FoundValue& found) const {
    const auto* const word = found.value.template as<std::string>();
    const auto unit = word ? parse_temperature_unit(*word) : std::nullopt;
    const std::string plain = !unit                                  ? ""
                              : *unit == TemperatureUnit::celsius    ? "C"
                              : *unit == TemperatureUnit::fahrenheit ? "F"
                                                                     : "K";
    for (const auto& [name, value] : this->words)
      if (word && *word != name && plain == name)
        return found.refuse(value_problems::other_word_for_unit(found, name));
    return OneOfWords<T>::operator()(found);
  }
};
template <typename T>
UnitWord<T> unit_word(std::initializer_list<std::pair<std::string, T>> words) {
  return {{words}};
}

template <typename T>
OneOfWords<T> one_of(std::initializer_list<std::pair<std::string, T>> words) {
  return {words};
}
/// One of the words of an enumeration.
template <typename Enum, Enum last>
OneOfWords<Enum> one_of(const WordTable<Enum, last>& table) {
  OneOfWords<Enum> one;
  for (std::size_t i = 0; i < table.size; ++i)
    one.words.emplace_back(std::string{table.words[i]}, static_cast<Enum>(i));
  return one;
}

}  // namespace soakwright
