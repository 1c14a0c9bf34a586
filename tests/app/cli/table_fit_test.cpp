// SPDX-License-Identifier: GPL-3.0-or-later
// How a table is made to fit a narrow terminal. Common practice, no source.
#include "app/cli/printing/table_fit.h"

#include <catch2/catch.hpp>

using namespace soakwright::cli;
using Widths = std::vector<std::size_t>;
using Lines = std::vector<std::string>;

TEST_CASE("a table that fits stays as it is; else the widest columns give first, down to their words") {
  Widths widths{20, 0, 10};
  fit_widths(widths, {8, 0, 10}, 32, 2);
  CHECK(widths == Widths{20, 0, 10});
  fit_widths(widths, {8, 0, 10}, 27, 2);
  CHECK(widths == Widths{15, 0, 10});
  fit_widths(widths, {12, 0, 10}, 20, 2);
  CHECK(widths == Widths{9, 0, 9});
  fit_widths(widths, {12, 0, 10}, 1, 2);
  CHECK(widths == Widths{8, 0, 8});
}

TEST_CASE("a cell is parted at spaces, keeps its indent, and a longer word is parted anywhere") {
  CHECK(wrapped_cell("one two three", 20) == Lines{"one two three"});
  CHECK(wrapped_cell("one two three", 8) == Lines{"one two", "three"});
  CHECK(wrapped_cell("  one two", 6) == Lines{"  one", "  two"});
  CHECK(wrapped_cell("thermocouples", 8) == Lines{"thermoco", "uples"});
  CHECK(wrapped_cell("≤ 144.7 °C/h", 8) == Lines{"≤ 144.7", "°C/h"});
  CHECK(wrapped_cell("", 8) == Lines{""});
}

TEST_CASE("the longest word counts with the indent before it") {
  CHECK(longest_word("  one three") == 7);
  CHECK(longest_word("≤ 144.7 °C/h") == 5);
  CHECK(longest_word("") == 0);
  CHECK(longest_word("   ") == 0);
}
