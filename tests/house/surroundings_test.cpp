// SPDX-License-Identifier: GPL-3.0-or-later
// The tests' own surroundings: catch_main.cpp asks for a comma locale and a time zone half an hour off.
#include <clocale>
#include <cstdlib>
#include <ctime>
#include <string>

#include <catch2/catch.hpp>

TEST_CASE("tests run half an hour off any whole zone") {
  const std::time_t epoch = 0;
  std::tm local{};
  localtime_r(&epoch, &local);
  CHECK(local.tm_hour == 5);
  CHECK(local.tm_min == 30);
}

TEST_CASE("tests run with a comma for the decimal point, where the machine has the locale") {
  const std::string point = std::localeconv()->decimal_point;
  // tests/run makes the locale and says so; a developer's own machine may lack it.
  if (std::getenv("SOAKWRIGHT_LOCALE_MADE") != nullptr)
    CHECK(point == ",");
  else if (point != ",")
    WARN("de_DE.UTF-8 is not there: run tests/run");
}
