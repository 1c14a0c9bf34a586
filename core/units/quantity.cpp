// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/quantity.h"

#include <cmath>

namespace soakwright {

Quantity quantity_of(QuantityKind kind, double value) {
  switch (kind) {
    case QuantityKind::temperature:
      return Temperature::of_celsius(value);
    case QuantityKind::difference:
      return TemperatureDifference::of_kelvin(value);
    case QuantityKind::rate:
      return HeatingRate::of_celsius_per_hour(value);
    case QuantityKind::duration:
      return Duration::of_seconds(value);
    case QuantityKind::ratio:
      return Ratio::of(value);
    case QuantityKind::count:
      return Count::of(std::llround(value));
  }
  return Ratio::of(value);
}

}  // namespace soakwright
