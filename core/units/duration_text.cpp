// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/duration_text.h"

#include <cmath>
#include <cstddef>

#include "core/units/number_text.h"

namespace soakwright {
namespace {

struct Unit {
  std::string_view name;
  double seconds;
};
constexpr Unit kUnits[] = {{"h", 3600.0}, {"min", 60.0}, {"s", 1.0}};

}  // namespace

std::optional<double> parse_duration(std::string_view text) {
  text = trimmed(text);
  const bool negative = text.starts_with('-');
  if (negative) text = trimmed(text.substr(1));
  double seconds = 0.0;
  const Unit* next = std::begin(kUnits);
  bool fraction = false;
  if (text.empty()) return std::nullopt;
  while (!text.empty()) {
    // A sign or an exponent inside a duration is a slip of the pen, not a number.
    const std::size_t number_end = text.find_first_not_of("0123456789.");
    if (number_end == 0 || number_end == std::string_view::npos || fraction) return std::nullopt;
    const auto number = parse_number(text.substr(0, number_end));
    if (!number) return std::nullopt;
    text = trimmed(text.substr(number_end));
    const std::string_view name = text.substr(0, text.find_first_of(" \t0123456789.-+"));
    while (next != std::end(kUnits) && next->name != name) ++next;
    if (next == std::end(kUnits)) return std::nullopt;
    fraction = *number != std::floor(*number);
    seconds += *number * next->seconds;
    ++next;
    text = trimmed(text.substr(name.size()));
  }
  if (!std::isfinite(seconds)) return std::nullopt;
  return negative ? -seconds : seconds;
}

}  // namespace soakwright
