// SPDX-License-Identifier: GPL-3.0-or-later
// Diffusivities and activation energies from text and to text. The factors are those of the metre: 1 m² is
// 10⁴ cm² and 10⁶ mm².
#include "core/units/diffusivity_text.h"

#include <catch2/catch.hpp>

using namespace soakwright;

TEST_CASE("a diffusivity is read with its unit, in m²/s") {
  CHECK(parse_diffusivity("5.1e-5 cm2/s") == 5.1e-9);
  CHECK(parse_diffusivity("5.1e-5 cm²/s") == 5.1e-9);
  CHECK(parse_diffusivity("4.57e-7 m2/s") == 4.57e-7);
  CHECK(*parse_diffusivity("0.0051 mm²/s") == Approx(5.1e-9).epsilon(1e-15));
  for (const char* const text :
       {"", "5.1e-5", "cm2/s", "5.1e-5 cm2", "5.1e-5 cm/s", "5,1e-5 cm2/s", "5.1e-5 in2/s"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_diffusivity(text));
  }
}

TEST_CASE("an activation energy is read with its unit, in J/mol") {
  CHECK(parse_activation_energy("22.3 kJ/mol") == 22300.0);
  CHECK(parse_activation_energy("22300 J/mol") == 22300.0);
  for (const char* const text : {"", "22.3", "22.3 kJ", "22.3 eV", "5.3 kcal/mol"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_activation_energy(text));
  }
}

TEST_CASE("a diffusivity is printed in cm²/s with at most two digits behind the point") {
  CHECK(diffusivity_text(5.1e-9) == "5.1e-5 cm²/s");
  CHECK(diffusivity_text(4.57e-7) == "4.57e-3 cm²/s");
  CHECK(diffusivity_text(1e-8) == "1e-4 cm²/s");
  CHECK(diffusivity_text(9.999e-9) == "1e-4 cm²/s");
  CHECK(diffusivity_text(0.0) == "0 cm²/s");
}
