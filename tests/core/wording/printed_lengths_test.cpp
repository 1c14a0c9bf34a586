// SPDX-License-Identifier: GPL-3.0-or-later
// 1 in is exactly 25.4 mm and 1 ft exactly 0.3048 m (NIST SP 811, B.8).
#include "core/wording/printed_lengths.h"

#include <catch2/catch.hpp>

using namespace soakwright;

TEST_CASE("in a report in °F the round figure of a thickness stands first, the other beside it") {
  constexpr auto kInch = LengthUnit::inch;
  constexpr auto kMm = LengthUnit::millimetre;
  constexpr auto kF = TemperatureUnit::fahrenheit;
  CHECK(thickness_text(Thickness::of(1.0, kInch), kF) == "1 in (25.4 mm)");
  CHECK(thickness_text(Thickness::of(1.5, kInch), kF) == "1.5 in (38.1 mm)");
  CHECK(thickness_text(Thickness::of(0.0625, kInch), kF) == "0.0625 in (1.59 mm)");
  CHECK(thickness_text(Thickness::of(38.0, kMm), kF) == "38 mm (1.4961 in)");
  CHECK(thickness_text(Thickness::of(1.0, kInch), TemperatureUnit::celsius) == "25.4 mm");
}

TEST_CASE("in a report in °F a length is in feet too") {
  CHECK(length_text(15.0 * 0.3048, TemperatureUnit::fahrenheit) == "15 ft (4.572 m)");
  CHECK(length_text(4.6, TemperatureUnit::fahrenheit) == "4.6 m (15.092 ft)");
  CHECK(length_text(4.6, TemperatureUnit::celsius) == "4.6 m");
  CHECK(length_unit_text(LengthUnit::inch) == "inches");
}
