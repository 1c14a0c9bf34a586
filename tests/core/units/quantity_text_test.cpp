// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/quantity_text.h"

#include <catch2/catch.hpp>

using namespace soakwright;

TEST_CASE("a thickness is in mm or in, and 1 in is 25.4 mm") {
  // NIST SP 811 appendix B: 1 in = 25.4 mm exactly.
  CHECK(parse_thickness("38 mm")->millimetres() == 38.0);
  CHECK(parse_thickness("1 in")->millimetres() == 25.4);
  CHECK(parse_thickness("2 in")->in(LengthUnit::inch) == 2.0);
  CHECK(parse_thickness("50.8mm")->in(LengthUnit::inch) == 2.0);
  for (const char* const text : {"38", "mm", "38 cm", "38 m", "1/2 in", "1.5 \"", "38 mm 2", "nan mm"}) {
    INFO(text);
    CHECK_FALSE(parse_thickness(text).has_value());
  }
}

TEST_CASE("a length comes out in metres") {
  // NIST SP 811 appendix B: 1 ft = 0.3048 m, 1 in = 0.0254 m, exactly.
  struct Row {
    const char* text;
    double metres;
  };
  for (const Row row : {Row{"1.2 m", 1.2}, Row{"300 mm", 0.3}, Row{"30 cm", 0.3}, Row{"15 ft", 4.572},
                        Row{"12 in", 0.3048}, Row{"-0.5 m", -0.5}}) {
    INFO(row.text);
    CHECK(parse_length_m(row.text) == row.metres);
  }
  for (const char* const text : {"4.6", "m", "4.6 metres", "4,6 m", "4.6 M"}) {
    INFO(text);
    CHECK_FALSE(parse_length_m(text).has_value());
  }
}

TEST_CASE("an angle is in degrees") {
  CHECK(parse_angle_deg("90 deg") == 90.0);
  CHECK(parse_angle_deg("90\u00b0") == 90.0);
  CHECK_FALSE(parse_angle_deg("90").has_value());
  // Twelve is on top, clockwise (common practice, no source).
  CHECK(parse_angle_deg("12 o'clock") == 0.0);
  CHECK(parse_angle_deg("3 o'clock") == 90.0);
  CHECK(parse_angle_deg("1.5 o'clock") == 45.0);
  CHECK(parse_angle_deg("9 o\u2019clock") == 270.0);
  CHECK_FALSE(parse_angle_deg("0 o'clock").has_value());
  CHECK_FALSE(parse_angle_deg("13 o'clock").has_value());
  CHECK_FALSE(parse_angle_deg("1 rad").has_value());
}

TEST_CASE("a fixed temperature converts with the offset") {
  CHECK(parse_temperature("23.0 C")->celsius() == 23.0);
  CHECK(parse_temperature("23 \u00b0C")->celsius() == 23.0);
  CHECK(parse_temperature("23 deg C")->celsius() == 23.0);
  CHECK(parse_temperature("73.4 F")->celsius() == 23.0);
  CHECK(parse_temperature("296.15 K")->celsius() == 23.0);
  for (const char* const text : {"Terminals", "23", "23 R", "TC 23 C", "C"}) {
    INFO(text);
    CHECK_FALSE(parse_temperature(text).has_value());
  }
}

TEST_CASE("a plus-minus value converts without the offset, whichever way its sign is written") {
  for (const char* const text :
       {"\u00b11.8 F", "\u00b1 1.8 F", "+-1.8 F", "+/- 1.8 F", "1.8 F", "\u00b11 C", "\u00b11 K"}) {
    INFO(text);
    CHECK(parse_plus_minus(text)->kelvin() == 1.0);
  }
  for (const char* const text : {"\u00b11.1", "\u00b1-1.1 C", "+-+1 C", "class 3", "\u00b1 C", "1.1 %"}) {
    INFO(text);
    CHECK_FALSE(parse_plus_minus(text).has_value());
  }
}
