#include "core/record/column_kind.h"

#include <algorithm>
#include <initializer_list>
#include <optional>
#include <string_view>
#include <vector>

#include "core/read/unit_name.h"

namespace soakwright {
namespace {

/// Letters and digits of a name in lower case, parted where something else stands, or where a number begins.
std::vector<std::string> words_of(std::string_view name) {
  std::vector<std::string> words;
  std::string word;
  const auto flush = [&] {
    if (!word.empty()) words.push_back(std::move(word));
    word.clear();
  };
  for (const char c : lower_case(name)) {
    const bool letter = (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
    if (letter)
      word += c;
    else
      flush();
  }
  flush();
  return words;
}

bool has_word(const std::vector<std::string>& words, std::initializer_list<std::string_view> wanted) {
  return std::any_of(words.begin(), words.end(), [&](const std::string& word) {
    return std::find(wanted.begin(), wanted.end(), word) != wanted.end();
  });
}

bool has_words(const std::vector<std::string>& words, std::string_view first, std::string_view second) {
  for (std::size_t i = 0; i + 1 < words.size(); ++i)
    if (words[i] == first && words[i + 1] == second) return true;
  return false;
}

/// Names of temperatures that no thermocouple on the work measures.
std::optional<std::string> temperature_apart(const std::vector<std::string>& words) {
  if (has_words(words, "set", "point") || has_words(words, "set", "value") ||
      has_words(words, "set", "temp") ||
      has_word(words, {"setpoint", "setpt", "sp", "sv", "target", "programme", "program", "setvalue"}))
    return "set point";
  if (has_words(words, "cold", "junction") || has_words(words, "reference", "junction") ||
      has_word(words, {"cj", "cjc", "cjt", "terminal", "terminals", "coldjunction"}))
    return "cold junction";
  return std::nullopt;
}

/// Names of what is no temperature.
std::optional<std::string> other_by_name(std::string_view name, const std::vector<std::string>& words) {
  if (name.find('%') != std::string_view::npos ||
      has_word(words, {"output", "out", "op", "power", "valve", "firing", "percent"}))
    return "output";
  if (has_word(words, {"pressure", "press", "vacuum"})) return "pressure";
  if (has_word(words, {"flux", "heatflux"})) return "heat flux";
  if (has_word(words, {"alarm", "alarms", "event", "events", "status", "state", "flag", "flags", "mark",
                       "marker", "message", "fault", "error", "mode", "digital", "relay"}))
    return "alarm or event";
  if (has_word(words, {"comment", "comments", "note", "notes", "remark", "remarks", "operator", "batch", "id",
                       "serial"}))
    return "text";
  if (has_word(words, {"humidity", "rh", "flow", "current", "voltage", "volts", "speed", "level", "weight",
                       "battery", "strain", "load", "displacement", "velocity", "density"}))
    return "another quantity";
  if (name == "#" || (words.size() == 1 && has_word(words, {"no", "nr", "index", "scan", "sample", "record",
                                                            "row", "count", "number"})))
    return "counter";
  return std::nullopt;
}

std::optional<ChannelUnit> channel_unit(SaidUnit unit) {
  switch (unit) {
    case SaidUnit::celsius:
      return ChannelUnit::celsius;
    case SaidUnit::fahrenheit:
      return ChannelUnit::fahrenheit;
    case SaidUnit::kelvin:
      return ChannelUnit::kelvin;
    case SaidUnit::millivolt:
      return ChannelUnit::millivolt;
    default:
      return std::nullopt;
  }
}

ColumnKind apart(std::string why, bool is_degrees = false, ChannelUnit unit = ChannelUnit::celsius) {
  ColumnKind kind;
  kind.why = std::move(why);
  kind.is_degrees = is_degrees;
  kind.unit = unit;
  return kind;
}

}  // namespace

ColumnKind kind_of(const LogColumn& column) {
  const std::vector<std::string> words = words_of(column.name);
  const auto said = unit_of(column.unit);
  if (!column.unit.empty()) {
    const auto unit = said ? channel_unit(*said) : std::nullopt;
    if (!unit) return apart("unit " + column.unit);
    const bool degrees = *unit != ChannelUnit::millivolt;
    if (const auto why = temperature_apart(words)) return apart(*why, degrees, *unit);
    // "(K)" above readings that no kelvin scale has is the type of the thermocouple.
    constexpr double kColdestKelvin = 150.0;
    if (*unit == ChannelUnit::kelvin && column.numbers != 0 && column.highest < kColdestKelvin)
      return {true, true, ChannelUnit::celsius, true, {}};
    return {true, degrees, *unit, false, {}};
  }
  if (const auto why = temperature_apart(words)) return apart(*why, true);
  if (const auto why = other_by_name(column.name, words)) return apart(*why);
  if (column.numbers == 0) return apart(column.texts.count != 0 ? "text" : "empty");
  if (column.texts.count > column.numbers) return apart("text");
  return {true, true, ChannelUnit::celsius, true, {}};
}

}  // namespace soakwright
