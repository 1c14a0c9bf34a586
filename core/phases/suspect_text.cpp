#include "core/phases/suspect_text.h"

#include <cmath>

#include "core/units/duration_text.h"
#include "core/units/number_text.h"

namespace soakwright {

std::string length_text(double from_s, double to_s) {
  const double seconds = to_s - from_s;
  return duration_text(seconds >= 600.0 ? 60.0 * std::round(seconds / 60.0) : std::round(seconds));
}

std::string celsius_text(double celsius) { return fixed_text(celsius, 1) + " °C"; }

std::string kelvin_text(double kelvin) { return fixed_text(std::abs(kelvin), 1) + " K"; }

}  // namespace soakwright
