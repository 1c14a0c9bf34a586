// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/unit_name.h"

#include <optional>
#include <string>

#include <catch2/catch.hpp>

using namespace soakwright;

TEST_CASE("any writing of a temperature unit is known") {
  for (const char* text :
       {"C",       "c",      "°C",    "° C",   "ºC",    "˚C",       "℃",         "degC",
        "deg C",   "deg. C", "DEG.C", "Deg_C", "deg-C", "degree C", "degrees C", "Degrees Celsius",
        "celsius", "(°C)",   "[C]",   "deg/C"}) {
    INFO(text);
    CHECK(unit_of(text) == SaidUnit::celsius);
  }
  for (const char* text : {"F", "°F", "degF", "DEG F", "℉", "fahrenheit", "degrees Fahrenheit", "[°F]"}) {
    INFO(text);
    CHECK(unit_of(text) == SaidUnit::fahrenheit);
  }
  for (const char* text : {"K", "kelvin", "(K)"}) {
    INFO(text);
    CHECK(unit_of(text) == SaidUnit::kelvin);
  }
  for (const char* text : {"mV", "MV", "millivolts"}) {
    INFO(text);
    CHECK(unit_of(text) == SaidUnit::millivolt);
  }
  for (const char* text : {"", "TC1", "CC", "Cable", "deg X", "degassing", "Celsius 1", "FC"}) {
    INFO(text);
    CHECK_FALSE(unit_of(text).has_value());
  }
  for (const char* text : {"kW", "bar", "%", "kW/m2", "N/C", "V"}) {
    INFO(text);
    CHECK(unit_of(text) == SaidUnit::other);
  }
}

TEST_CASE("a header cell is a name and perhaps a unit") {
  struct Header {
    const char* cell;
    const char* name;
    const char* unit;
  };
  const Header table[] = {
      {"TC1 (°C)", "TC1", "°C"},
      {"TC1 [degC]", "TC1", "degC"},
      {"TC1 °C", "TC1", "°C"},
      {"TC1/°C", "TC1", "°C"},
      {"TC1, deg F", "TC1", "deg F"},
      {"TC1_degC", "TC1", "degC"},
      {"TC1 deg.C", "TC1", "deg.C"},
      {"TC 1 (K)", "TC 1", "K"},
      {"TC1 mV", "TC1", "mV"},
      {"TC1(C)", "TC1", "C"},
      {"Time (s)", "Time", "s"},
      {"Time s", "Time", "s"},
      {"Elapsed [min]", "Elapsed", "min"},
      {"TC1", "TC1", ""},
      {"T 1.10", "T 1.10", ""},
      {"TC1 (inside)", "TC1 (inside)", ""},
      {"Zone C", "Zone C", ""},
      {"TC1 min", "TC1 min", ""},
      {"Type K", "Type K", ""},
      {"TC3 inside, 90°", "TC3 inside, 90°", ""},
      {"HeatFlux_Gardon", "HeatFlux_Gardon", ""},
      {"Cable 1", "Cable 1", ""},
      {"  TC1  ", "TC1", ""},
      {"Output (%)", "Output", "%"},
      {"N2/shell", "N2/shell", ""},
  };
  for (const Header& entry : table) {
    INFO(entry.cell);
    const NameAndUnit parts = name_and_unit(entry.cell);
    CHECK(parts.name == entry.name);
    CHECK(parts.unit == entry.unit);
  }
}
