// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/temperature.h"

#include <type_traits>

#include <catch2/catch.hpp>

using namespace soakwright;

namespace {

template <typename A, typename B, typename = void>
struct can_add : std::false_type {};
template <typename A, typename B>
struct can_add<A, B, std::void_t<decltype(std::declval<A>() + std::declval<B>())>> : std::true_type {};
template <typename A, typename B, typename = void>
struct can_subtract : std::false_type {};
template <typename A, typename B>
struct can_subtract<A, B, std::void_t<decltype(std::declval<A>() - std::declval<B>())>> : std::true_type {};

// Sums that make no sense do not compile.
static_assert(!can_add<Temperature, Temperature>::value);
static_assert(!can_add<Temperature, HeatingRate>::value);
static_assert(!can_add<Temperature, double>::value);
static_assert(!can_subtract<TemperatureDifference, Temperature>::value);
static_assert(!std::is_convertible_v<TemperatureDifference, Temperature>);
static_assert(!std::is_convertible_v<double, Temperature>);
// Those that do, do.
static_assert(std::is_same_v<decltype(Temperature{} - Temperature{}), TemperatureDifference>);
static_assert(std::is_same_v<decltype(Temperature{} + TemperatureDifference{}), Temperature>);

}  // namespace

TEST_CASE("a temperature converts with the offset and a difference without") {
  // NIST SP 811, appendix B.8: t/C = (t/F - 32)/1.8; 1 F of interval = 5/9 K.
  CHECK(Temperature::of(1100, TemperatureUnit::fahrenheit).celsius() == 5340.0 / 9.0);
  CHECK(TemperatureDifference::of(9, TemperatureUnit::fahrenheit).kelvin() == 5.0);
  CHECK(HeatingRate::of(600, TemperatureUnit::fahrenheit).celsius_per_hour() ==
        Approx(333.333333333).epsilon(1e-12));
}

TEST_CASE("decimals in Fahrenheit and kelvin become the nearest double to the exact Celsius value") {
  CHECK(Temperature::of(1094, TemperatureUnit::fahrenheit).celsius() == 590.0);
  CHECK(Temperature::of(863.15, TemperatureUnit::kelvin).celsius() == 590.0);
  CHECK(Temperature::of(32.18, TemperatureUnit::fahrenheit).celsius() == 0.1);
}
