#include "core/phases/suspect_text.h"

#include <cmath>

#include "core/units/printed_quantity.h"

namespace soakwright {

std::string length_text(double from_s, double to_s) {
  const double seconds = to_s - from_s;
  return printed_duration(seconds >= 600.0 ? 60.0 * std::round(seconds / 60.0) : std::round(seconds));
}

std::string celsius_text(double celsius) { return decimal_text(celsius, 1) + " °C"; }

std::string kelvin_text(double kelvin) { return decimal_text(std::abs(kelvin), 1) + " °C"; }

}  // namespace soakwright
