// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/number_text.h"

#include <limits>

#include <catch2/catch.hpp>

using namespace soakwright;

TEST_CASE("numbers that are accepted") {
  struct Row {
    const char* text;
    double value;
  };
  for (const Row row :
       {Row{"0", 0}, Row{"620", 620}, Row{"-1.4", -1.4}, Row{"+17.9", 17.9}, Row{" 0.5\t", 0.5},
        Row{"1e3", 1000}, Row{"1.5E-2", 0.015}, Row{".5", 0.5}, Row{"5.", 5}}) {
    INFO(row.text);
    CHECK(parse_number(row.text) == row.value);
  }
}

TEST_CASE("numbers that are refused") {
  for (const char* const text : {"", " ", "C", "1,5", "1 000", "12 C", "--1", "+-1", "nan", "inf", "-inf",
                                 "1e999", "0x10", "1.2.3", "1e"}) {
    INFO(text);
    CHECK_FALSE(parse_number(text).has_value());
  }
}

TEST_CASE("a number comes back as it was typed") {
  for (const char* const text : {"0", "-1.4", "620", "0.1", "144.73684210526315", "1e+300", "5e-324"}) {
    CHECK(number_text(parse_number(text).value()) == text);
  }
  CHECK(number_text(1.0 / 3.0) == "0.3333333333333333");
}

TEST_CASE("a number for people has the places wanted and no negative zero") {
  CHECK(fixed_text(144.7368, 1) == "144.7");
  CHECK(fixed_text(-0.04, 1) == "0.0");
  CHECK(fixed_text(-0.06, 1) == "-0.1");
  CHECK(fixed_text(590.0, 0) == "590");
  CHECK(fixed_text(std::numeric_limits<double>::max(), 2).size() == 312);
}

TEST_CASE("a number and its unit come apart") {
  const auto found = split_number_and_unit("  38   mm ");
  REQUIRE(found.has_value());
  CHECK(found->number == 38.0);
  CHECK(found->unit == "mm");
  CHECK(split_number_and_unit("15ft")->unit == "ft");
  CHECK_FALSE(split_number_and_unit("38").has_value());
  CHECK_FALSE(split_number_and_unit("mm").has_value());
}
