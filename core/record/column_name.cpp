// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/column_name.h"

#include <algorithm>
#include <span>
#include <utility>
#include <vector>

#include "core/read/unit_name.h"

namespace soakwright {
namespace {

using Says = ColumnName::Says;

/// Letters in lower case and digits, each in a word of its own: "SP-101" is "sp" and "101".
std::vector<std::string> words_of(std::string_view name) {
  enum class Kind { none, letter, digit };
  std::vector<std::string> words;
  Kind before = Kind::none;
  for (const char c : lower_case(name)) {
    const bool letter = (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
    const bool digit = c >= '0' && c <= '9';
    const Kind kind = letter ? Kind::letter : digit ? Kind::digit : Kind::none;
    if (kind != Kind::none && kind != before) words.emplace_back();
    if (kind != Kind::none) words.back() += c;
    before = kind;
  }
  return words;
}

bool is_number(const std::string& word) { return word.front() >= '0' && word.front() <= '9'; }

using Words = std::vector<std::string>;
using List = std::span<const std::string_view>;

bool in(const std::string& word, List list) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

bool any_in(const Words& words, List list) {
  return std::any_of(words.begin(), words.end(), [list](const std::string& word) { return in(word, list); });
}

/// Every word is in `list` or a number of at most `digits` digits.
bool all_in(const Words& words, List list, std::size_t digits) {
  return std::all_of(words.begin(), words.end(), [&](const std::string& word) {
    return is_number(word) ? word.size() <= digits : in(word, list);
  });
}

bool follow(const Words& words, std::string_view first, std::string_view second) {
  for (std::size_t i = 0; i + 1 < words.size(); ++i)
    if (words[i] == first && words[i + 1] == second) return true;
  return false;
}

constexpr std::string_view kSetPoint[] = {"setpoint", "setpoints", "setpt", "setvalue", "settemp"};
/// Short forms, which are names of parts as often: a spool, a safety valve, a target plate.
constexpr std::string_view kSetPointShort[] = {"sp", "sv", "wsp", "tsp", "target", "programme", "program"};
/// What may stand beside them and still leaves a set point.
constexpr std::string_view kBesideSetPoint[] = {
    "sp",         "sv",      "wsp",         "tsp",    "target", "programme", "program", "set",     "point",
    "value",      "temp",    "temperature", "zone",   "z",      "loop",      "channel", "ch",      "control",
    "controller", "furnace", "oven",        "heater", "kiln",   "pid",       "tc",      "working", "remote",
    "local",      "master",  "main",        "ramp",   "no",     "nr",        "c",       "f"};
constexpr std::string_view kColdJunction[] = {"cj", "cjc", "cjt", "terminal", "terminals", "coldjunction"};
constexpr std::string_view kBesideColdJunction[] = {
    "cj",           "cjc",      "cjt",       "terminal", "terminals", "coldjunction",
    "cold",         "junction", "reference", "ref",      "temp",      "temperature",
    "compensation", "comp",     "block",     "box",      "board",     "card",
    "module",       "internal", "recorder",  "logger",   "sensor",    "no",
    "nr",           "channel",  "ch",        "c",        "f",         "t"};

/// Names of what is no temperature at all.
constexpr std::string_view kOutput[] = {"output", "outputs", "out",    "op",
                                        "power",  "valve",   "firing", "percent"};
constexpr std::string_view kPressure[] = {"pressure", "press", "vacuum"};
constexpr std::string_view kFlux[] = {"flux", "heatflux"};
constexpr std::string_view kAlarm[] = {"alarm", "alarms", "event",   "events", "status",  "state",
                                       "flag",  "flags",  "mark",    "marker", "message", "fault",
                                       "error", "mode",   "digital", "relay"};
constexpr std::string_view kText[] = {"comment", "comments", "note",  "notes", "remark",
                                      "remarks", "operator", "batch", "id",    "serial"};
constexpr std::string_view kQuantity[] = {
    "humidity", "rh",    "flow",    "current", "voltage", "volts",        "amps",     "speed",    "level",
    "weight",   "force", "battery", "strain",  "load",    "displacement", "position", "velocity", "density"};
constexpr std::string_view kCounter[] = {"no",     "nr",  "index", "scan",  "sample",
                                         "record", "row", "count", "number"};
constexpr std::string_view kThermocouple[] = {"tc", "tcs", "thermocouple", "thermocouples"};

struct Meaning {
  ColumnName::Says says;
  ColumnContent why;
  List words;
};
constexpr Meaning kMeanings[] = {
    {Says::output, ColumnContent::output, kOutput}, {Says::other, ColumnContent::pressure, kPressure},
    {Says::other, ColumnContent::heat_flux, kFlux}, {Says::other, ColumnContent::alarm, kAlarm},
    {Says::other, ColumnContent::text, kText},      {Says::other, ColumnContent::other_quantity, kQuantity}};

ColumnName meaning_of(std::string_view name, const Words& words) {
  if (any_in(words, kSetPoint) || follow(words, "set", "point") || follow(words, "set", "value") ||
      follow(words, "set", "temp") || follow(words, "set", "temperature"))
    return {Says::set_point, ColumnContent::set_point, true, true, false};
  // "SP12" is a spool's number rather than a loop's.
  if (any_in(words, kSetPointShort))
    return {Says::set_point, ColumnContent::set_point, all_in(words, kBesideSetPoint, 1), false, false};
  if (any_in(words, kColdJunction) || follow(words, "cold", "junction") ||
      follow(words, "reference", "junction"))
    return {Says::cold_junction, ColumnContent::cold_junction, all_in(words, kBesideColdJunction, 2), false,
            false};
  if (name.find('%') != std::string_view::npos)
    return {Says::output, ColumnContent::output, true, false, false};
  for (const Meaning& meaning : kMeanings)
    if (any_in(words, meaning.words)) return {meaning.says, meaning.why, true, false, false};
  Words letters = words;
  letters.erase(std::remove_if(letters.begin(), letters.end(), is_number), letters.end());
  if (name == "#" || (letters.size() == 1 && in(letters.front(), kCounter)))
    return {Says::counter, ColumnContent::counter, true, false, false};
  return {};
}

}  // namespace

ColumnName meaning_of_name(std::string_view name) {
  const Words words = words_of(name);
  ColumnName meaning = meaning_of(name, words);
  meaning.names_thermocouple = any_in(words, kThermocouple) || follow(words, "t", "c");
  return meaning;
}

}  // namespace soakwright
