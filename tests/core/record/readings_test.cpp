// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/readings.h"

#include <memory>
#include <vector>

#include <catch2/catch.hpp>

using namespace soakwright;

namespace {

Readings decimals(const std::vector<std::int32_t>& units, TemperatureUnit unit, int places) {
  std::shared_ptr<std::int32_t[]> copy{new std::int32_t[units.size()]};
  std::size_t missing = 0;
  for (std::size_t i = 0; i < units.size(); ++i) {
    copy[static_cast<std::ptrdiff_t>(i)] = units[i];
    if (units[i] == Readings::kMissingUnits) ++missing;
  }
  return Readings::of_decimals(copy, units.size(), missing, DecimalScale::of(unit, places));
}

}  // namespace

TEST_CASE("a decimal comes back as the nearest double to what the log printed") {
  const Readings celsius = decimals({205, -71, Readings::kMissingUnits}, TemperatureUnit::celsius, 1);
  CHECK(celsius.celsius(0) == 20.5);
  CHECK(celsius.celsius(1) == -7.1);
  CHECK_FALSE(celsius.celsius(2).has_value());
  CHECK(celsius.missing() == 1);
  CHECK(celsius.resolution_k() == 0.1);
  // NIST SP 811, appendix B.8: t/C = (t/F - 32)/1.8 and t/C = T/K - 273.15.
  CHECK(decimals({1100}, TemperatureUnit::fahrenheit, 0).celsius(0) == 5340.0 / 9.0);
  CHECK(decimals({3218}, TemperatureUnit::fahrenheit, 2).celsius(0) == 0.1);
  CHECK(decimals({863}, TemperatureUnit::kelvin, 0).celsius(0) == 589.85);
  CHECK(decimals({8631}, TemperatureUnit::kelvin, 1).celsius(0) == 589.95);
  CHECK(decimals({86315}, TemperatureUnit::kelvin, 2).celsius(0) == 590.0);
  CHECK(decimals({863151}, TemperatureUnit::kelvin, 3).celsius(0) == 590.001);
  CHECK(decimals({1}, TemperatureUnit::fahrenheit, 1).resolution_k() == 0.5 / 9.0);
}

TEST_CASE("the difference of two decimals is the decimal difference") {
  const Readings hot = decimals({10101}, TemperatureUnit::celsius, 1);
  const Readings cold = decimals({10001}, TemperatureUnit::celsius, 1);
  CHECK(Readings::difference_k(hot, 0, cold, 0) == 10.0);
  const Readings finer = decimals({100010}, TemperatureUnit::celsius, 2);
  CHECK(Readings::difference_k(hot, 0, finer, 0) == 10.0);
  const Readings fahrenheit = decimals({1850}, TemperatureUnit::fahrenheit, 0);
  CHECK(Readings::difference_k(hot, 0, fahrenheit, 0) == 1.0 / 10.0);  // 1850 F is exactly 1010 C
}

TEST_CASE("what is there is collected with its rows, whatever the tiles") {
  // Two tiles of four rows, one other column beside it: the layout of a store.
  std::shared_ptr<std::int32_t[]> tiles{new std::int32_t[16]};
  for (std::int32_t i = 0; i < 16; ++i) tiles[i] = 1000 + i;
  tiles[2] = Readings::kMissingUnits;
  tiles[9] = Readings::kMissingUnits;
  const Readings readings =
      Readings::of_decimals(tiles, 7, 2, DecimalScale::of(TemperatureUnit::celsius, 0), {2, 3, 8});
  std::vector<std::uint32_t> rows;
  std::vector<double> celsius;
  std::vector<std::int64_t> units;
  readings.collect(1, 7, rows, celsius);
  readings.collect_units(1, 7, units);
  CHECK(rows == std::vector<std::uint32_t>{1, 3, 4, 6});
  CHECK(celsius == std::vector<double>{1001, 1003, 1008, 1010});
  CHECK(units == std::vector<std::int64_t>{1001, 1003, 1008, 1010});
  CHECK(readings.celsius(6) == 1010.0);
}

TEST_CASE("complete readings are the same taken one by one, with their rows, or all at once") {
  std::shared_ptr<std::int32_t[]> tiles{new std::int32_t[16]};
  for (std::int32_t i = 0; i < 16; ++i) tiles[i] = 937 * i - 2000;
  for (const TemperatureUnit unit :
       {TemperatureUnit::celsius, TemperatureUnit::fahrenheit, TemperatureUnit::kelvin})
    for (const int places : {0, 1, 2, 3}) {
      const Readings readings = Readings::of_decimals(tiles, 7, 0, DecimalScale::of(unit, places), {2, 3, 8});
      std::vector<std::uint32_t> rows{99};
      std::vector<double> celsius{-1.0};
      std::vector<std::int64_t> units;
      readings.collect(1, 7, rows, celsius);
      readings.collect_units(1, 7, units);
      std::vector<double> all(6);
      readings.fill_celsius(1, 7, all.data());
      REQUIRE(rows == std::vector<std::uint32_t>{99, 1, 2, 3, 4, 5, 6});
      for (std::size_t row = 1; row < 7; ++row) {
        CHECK(celsius[row] == *readings.celsius(row));
        CHECK(all[row - 1] == *readings.celsius(row));
        CHECK(units[row - 1] == tiles[(row >> 2) * 8 + (row & 3)]);
      }
    }
}

TEST_CASE("a correction follows straight lines between its points and is level outside") {
  const Readings readings = decimals({-100, 0, 3000, 6000, 9000}, TemperatureUnit::celsius, 1);
  const std::vector<std::pair<Temperature, TemperatureDifference>> correction{
      {Temperature::of_celsius(0), TemperatureDifference::of_kelvin(0.0)},
      {Temperature::of_celsius(600), TemperatureDifference::of_kelvin(-1.4)}};
  const Readings corrected = readings.corrected(correction);
  CHECK(corrected.celsius(0) == -10.0);
  CHECK(corrected.celsius(1) == 0.0);
  CHECK(*corrected.celsius(2) == Approx(299.3).epsilon(1e-12));
  CHECK(*corrected.celsius(3) == Approx(598.6).epsilon(1e-12));
  CHECK(*corrected.celsius(4) == Approx(898.6).epsilon(1e-12));
  CHECK(corrected.resolution_k() == 0.1);
}
