// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/thickness.h"

#include <type_traits>

#include <catch2/catch.hpp>

using namespace soakwright;

// A bare number is no thickness.
static_assert(!std::is_convertible_v<double, Thickness>);

TEST_CASE("a thickness reads back in the unit that it was given in") {
  // NIST SP 811 appendix B: 1 in = 25.4 mm exactly.
  for (const double inches : {0.25, 0.5, 1.0, 2.0, 4.0, 5.0})
    CHECK(Thickness::of(inches, LengthUnit::inch).in(LengthUnit::inch) == inches);
  CHECK(Thickness::of(4, LengthUnit::inch).millimetres() == 101.6);
  CHECK(Thickness::of(38, LengthUnit::millimetre).in(LengthUnit::millimetre) == 38.0);
  CHECK(Thickness::of(1, LengthUnit::inch) > Thickness::of(25, LengthUnit::millimetre));
}
