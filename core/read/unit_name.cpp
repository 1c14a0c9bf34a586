// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/unit_name.h"

#include <array>
#include <utility>

#include "core/read/cell.h"

namespace soakwright {
namespace {

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

/// The bytes at the front of `text` that are a degree sign or a stand-in for it: °, º, ˚; 0 where there is
/// none.
std::size_t degree_sign(std::string_view text) {
  for (const std::string_view sign : {"\xC2\xB0", "\xC2\xBA", "\xCB\x9A"})
    if (text.substr(0, sign.size()) == sign) return sign.size();
  return 0;
}

/// Any writing of deg, degree, degrees or °, with any separator behind it; 0 where there is none.
std::size_t degree_prefix(std::string_view text) {
  std::size_t length = degree_sign(text);
  if (length == 0) {
    const std::string lower = lower_case(text.substr(0, 8));
    for (const std::string_view word : {"degrees", "degree", "degs", "deg"})
      if (lower.substr(0, word.size()) == word) {
        length = word.size();
        break;
      }
  }
  if (length == 0) return 0;
  while (length < text.size() && (text[length] == ' ' || text[length] == '.' || text[length] == '_' ||
                                  text[length] == '-' || text[length] == '/' || text[length] == ':'))
    ++length;
  return length;
}

struct Word {
  std::string_view text;
  SaidUnit unit;
};

// Written in lower case; what is not a temperature is only known so that it is not taken for one.
constexpr std::array kWords{Word{"celsius", SaidUnit::celsius},
                            Word{"centigrade", SaidUnit::celsius},
                            Word{"fahrenheit", SaidUnit::fahrenheit},
                            Word{"kelvin", SaidUnit::kelvin},
                            Word{"mv", SaidUnit::millivolt},
                            Word{"millivolt", SaidUnit::millivolt},
                            Word{"millivolts", SaidUnit::millivolt},
                            Word{"s", SaidUnit::seconds},
                            Word{"sec", SaidUnit::seconds},
                            Word{"secs", SaidUnit::seconds},
                            Word{"second", SaidUnit::seconds},
                            Word{"seconds", SaidUnit::seconds},
                            Word{"min", SaidUnit::minutes},
                            Word{"mins", SaidUnit::minutes},
                            Word{"minute", SaidUnit::minutes},
                            Word{"minutes", SaidUnit::minutes},
                            Word{"h", SaidUnit::hours},
                            Word{"hr", SaidUnit::hours},
                            Word{"hrs", SaidUnit::hours},
                            Word{"hour", SaidUnit::hours},
                            Word{"hours", SaidUnit::hours},
                            Word{"d", SaidUnit::days},
                            Word{"day", SaidUnit::days},
                            Word{"days", SaidUnit::days},
                            Word{"ms", SaidUnit::milliseconds},
                            Word{"msec", SaidUnit::milliseconds},
                            Word{"%", SaidUnit::other},
                            Word{"% rh", SaidUnit::other},
                            Word{"%rh", SaidUnit::other},
                            Word{"pct", SaidUnit::other},
                            Word{"percent", SaidUnit::other},
                            Word{"pa", SaidUnit::other},
                            Word{"kpa", SaidUnit::other},
                            Word{"mpa", SaidUnit::other},
                            Word{"hpa", SaidUnit::other},
                            Word{"bar", SaidUnit::other},
                            Word{"barg", SaidUnit::other},
                            Word{"bara", SaidUnit::other},
                            Word{"mbar", SaidUnit::other},
                            Word{"psi", SaidUnit::other},
                            Word{"psig", SaidUnit::other},
                            Word{"psia", SaidUnit::other},
                            Word{"inh2o", SaidUnit::other},
                            Word{"mmh2o", SaidUnit::other},
                            Word{"w", SaidUnit::other},
                            Word{"kw", SaidUnit::other},
                            Word{"mw", SaidUnit::other},
                            Word{"kwh", SaidUnit::other},
                            Word{"w/m2", SaidUnit::other},
                            Word{"kw/m2", SaidUnit::other},
                            Word{"w/cm2", SaidUnit::other},
                            Word{"kw/m\xC2\xB2", SaidUnit::other},
                            Word{"w/m\xC2\xB2", SaidUnit::other},
                            Word{"kw/m^2", SaidUnit::other},
                            Word{"w/m^2", SaidUnit::other},
                            Word{"v", SaidUnit::other},
                            Word{"volt", SaidUnit::other},
                            Word{"volts", SaidUnit::other},
                            Word{"kv", SaidUnit::other},
                            Word{"uv", SaidUnit::other},
                            Word{"\xC2\xB5v", SaidUnit::other},
                            Word{"a", SaidUnit::other},
                            Word{"amp", SaidUnit::other},
                            Word{"amps", SaidUnit::other},
                            Word{"ma", SaidUnit::other},
                            Word{"hz", SaidUnit::other},
                            Word{"khz", SaidUnit::other},
                            Word{"rpm", SaidUnit::other},
                            Word{"1/min", SaidUnit::other},
                            Word{"l/min", SaidUnit::other},
                            Word{"l/h", SaidUnit::other},
                            Word{"m3/h", SaidUnit::other},
                            Word{"nm3/h", SaidUnit::other},
                            Word{"m/s", SaidUnit::other},
                            Word{"kg", SaidUnit::other},
                            Word{"kg/h", SaidUnit::other},
                            Word{"g/s", SaidUnit::other},
                            Word{"kg/s", SaidUnit::other},
                            Word{"ppm", SaidUnit::other},
                            Word{"mm", SaidUnit::other},
                            Word{"cm", SaidUnit::other},
                            Word{"m", SaidUnit::other},
                            Word{"in", SaidUnit::other},
                            Word{"ohm", SaidUnit::other},
                            Word{"ohms", SaidUnit::other},
                            Word{"kohm", SaidUnit::other},
                            Word{"n/c", SaidUnit::other},
                            Word{"kj", SaidUnit::other},
                            Word{"mj", SaidUnit::other},
                            Word{"nm", SaidUnit::other},
                            Word{"n", SaidUnit::other},
                            Word{"kn", SaidUnit::other},
                            Word{"on/off", SaidUnit::other},
                            Word{"c/h", SaidUnit::other},
                            Word{"c/min", SaidUnit::other},
                            Word{"\xC2\xB0"
                                 "c/h",
                                 SaidUnit::other},
                            Word{"\xC2\xB0"
                                 "c/min",
                                 SaidUnit::other},
                            Word{"k/min", SaidUnit::other},
                            Word{"k/h", SaidUnit::other},
                            Word{"\xC2\xB0"
                                 "f/h",
                                 SaidUnit::other},
                            Word{"f/h", SaidUnit::other},
                            Word{"f/min", SaidUnit::other}};

std::optional<SaidUnit> unit_of_letter(std::string_view text) {
  if (text.size() != 1) return std::nullopt;
  switch (text[0] & ~0x20) {
    case 'C':
      return SaidUnit::celsius;
    case 'F':
      return SaidUnit::fahrenheit;
    case 'K':
      return SaidUnit::kelvin;
    default:
      return std::nullopt;
  }
}

std::string_view without_brackets(std::string_view text) {
  if (text.size() >= 2) {
    const char open = text.front();
    const char close = text.back();
    if ((open == '(' && close == ')') || (open == '[' && close == ']') || (open == '{' && close == '}') ||
        (open == '<' && close == '>'))
      return without_spaces(text.substr(1, text.size() - 2));
  }
  return text;
}

/// Takes marks between a name and its unit off the end.
std::string_view without_tail_marks(std::string_view text) {
  while (!text.empty() &&
         (text.back() == ' ' || text.back() == '_' || text.back() == '/' || text.back() == ',' ||
          text.back() == '-' || text.back() == '.' || text.back() == ':' || text.back() == '\t'))
    text.remove_suffix(1);
  return text;
}

}  // namespace

std::string lower_case(std::string_view text) {
  std::string out{text};
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c | 0x20);
  return out;
}

bool measures_time(SaidUnit unit) {
  return unit == SaidUnit::seconds || unit == SaidUnit::minutes || unit == SaidUnit::hours ||
         unit == SaidUnit::days || unit == SaidUnit::milliseconds;
}

bool measures_temperature(SaidUnit unit) {
  return unit == SaidUnit::celsius || unit == SaidUnit::fahrenheit || unit == SaidUnit::kelvin ||
         unit == SaidUnit::millivolt;
}

bool is_time_name(std::string_view name) {
  const std::string lower = lower_case(without_spaces(name));
  for (const std::string_view word :
       {"time", "elapsed", "timestamp", "date", "zeit", "datum", "clock", "epoch", "unix"})
    if (lower.find(word) != std::string::npos) return true;
  return lower == "t" || lower == "sec" || lower == "seconds" || lower == "min" || lower == "minutes" ||
         lower == "hours" || lower == "h" || lower == "s" || lower == "runtime" || lower == "secs" ||
         lower == "hrs" || lower == "mins";
}

std::optional<SaidUnit> unit_of(std::string_view text, bool bare_letters) {
  text = without_brackets(without_spaces(text));
  if (text.empty()) return std::nullopt;
  if (text == "\xE2\x84\x83") return SaidUnit::celsius;     // ℃
  if (text == "\xE2\x84\x89") return SaidUnit::fahrenheit;  // ℉
  if (text == "\xE2\x84\xAA") return SaidUnit::kelvin;      // K as a sign
  if (const std::size_t prefix = degree_prefix(text); prefix != 0) {
    const std::string_view rest = text.substr(prefix);
    if (rest.empty()) return SaidUnit::celsius;
    if (const auto unit = unit_of_letter(rest)) return unit;
    const std::string word = lower_case(rest);
    if (word == "celsius" || word == "centigrade") return SaidUnit::celsius;
    if (word == "fahrenheit") return SaidUnit::fahrenheit;
    if (word == "kelvin") return SaidUnit::kelvin;
  }
  if (text.size() == 1) {
    // Lower-case c and f are abbreviations of other things as often; they count in a units row only.
    if (const auto unit = unit_of_letter(text)) return bare_letters ? unit : std::nullopt;
  }
  if (text == "C." || text == "F.") return bare_letters ? unit_of_letter(text.substr(0, 1)) : std::nullopt;
  const std::string lower = lower_case(text);
  for (const Word& word : kWords)
    if (word.text == lower) return word.unit;
  return std::nullopt;
}

NameAndUnit name_and_unit(std::string_view header) {
  const std::string_view text = without_spaces(header);
  // Brackets at the end: whatever stands in them is the unit if it is one.
  if (!text.empty() &&
      (text.back() == ')' || text.back() == ']' || text.back() == '}' || text.back() == '>')) {
    const char open = text.back() == ')' ? '(' : text.back() == ']' ? '[' : text.back() == '}' ? '{' : '<';
    const std::size_t at = text.rfind(open);
    if (at != std::string_view::npos && unit_of(text.substr(at))) {
      const std::string_view name = without_tail_marks(text.substr(0, at));
      const std::string_view unit = without_brackets(text.substr(at));
      return {std::string{name.empty() ? text : name}, std::string{unit}};
    }
  }
  // Behind a slash or a comma, as in "T/°C", "TC1, degF": a bare letter counts here too.
  for (const char mark : {'/', ','}) {
    const std::size_t at = text.rfind(mark);
    if (at == std::string_view::npos || at == 0) continue;
    const std::string_view tail = without_spaces(text.substr(at + 1));
    // "kW/m2" and "W/F" are no names with a unit behind them.
    if (unit_of(tail) && !unit_of(text))
      return {std::string{without_tail_marks(text.substr(0, at))}, std::string{tail}};
  }
  // A unit with a degree sign or the word degree, or a whole word, at the end.
  for (std::size_t at = 1; at < text.size(); ++at) {
    const std::string_view tail = text.substr(at);
    const bool degree = degree_prefix(tail) != 0 && (degree_sign(tail) != 0 || !is_letter(text[at - 1]));
    const bool compact = tail == "\xE2\x84\x83" || tail == "\xE2\x84\x89";
    const bool word = text[at - 1] == ' ' || text[at - 1] == '_';
    if (!degree && !compact && !word) continue;
    const auto unit = unit_of(tail, false);
    if (!unit) continue;
    // A degree sign alone behind a name is an angle as often: "inside, 90°".
    if (degree_sign(tail) == tail.size()) continue;
    // One letter for something else than a temperature is more likely part of the name ("Zone A", "Pump N").
    if (tail.size() == 1 && *unit == SaidUnit::other) continue;
    const std::string_view name = without_tail_marks(text.substr(0, at));
    if (name.empty()) continue;
    // "Time min" is in minutes, "TC1 min" is the lowest of something.
    if (measures_time(*unit) && !is_time_name(name)) continue;
    return {std::string{name}, std::string{tail}};
  }
  return {std::string{text}, {}};
}

}  // namespace soakwright
