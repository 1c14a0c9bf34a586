// SPDX-License-Identifier: GPL-3.0-or-later
// Printed quantities: one form for each kind, in °C and in °F, that reads back to the value printed.
#include "core/units/printed_quantity.h"

#include <random>

#include <catch2/catch.hpp>

#include "core/units/duration_text.h"
#include "core/units/number_text.h"
#include "core/units/quantity_text.h"

using namespace soakwright;

namespace {

constexpr QuantityFormat kCelsius{TemperatureUnit::celsius, 1, 0};
constexpr QuantityFormat kFahrenheit{TemperatureUnit::fahrenheit, 1, 0};

#ifdef NDEBUG
constexpr int kRandom = 170'000;  // for each of six kinds, a million in all
#else
constexpr int kRandom = 2'000;
#endif

/// With the hyphen that files have in place of the true minus.
std::string as_typed(std::string text) {
  if (text.starts_with("\u2212")) text.replace(0, 3, "-");
  return text;
}

/// Seconds of a printed duration, days included.
double seconds_of(std::string text) {
  double days = 0.0;
  text = as_typed(text);
  const bool negative = text.starts_with('-');
  if (negative) text.erase(0, 1);
  if (const auto end = text.find(" d"); end != std::string::npos) {
    days = parse_number(text.substr(0, end)).value();
    text.erase(0, end + 2);
  }
  const double rest = text.empty() ? 0.0 : parse_duration(text).value();
  return (negative ? -1.0 : 1.0) * (days * 86'400.0 + rest);
}

}  // namespace

TEST_CASE("Each kind of quantity has one form") {
  // Units after a space: ISO 80000-1:2022, 7.1.4 (from memory); the rest common practice, no source.
  struct Case {
    Quantity quantity;
    const char* celsius;
    const char* fahrenheit;
  };
  const Case cases[] = {
      {Temperature::of_celsius(611.6), "611.6 °C", "1132.9 °F"},
      {Temperature::of_celsius(611.643), "611.6 °C", "1133.0 °F"},
      {Temperature::of_celsius(-5.5), "\u22125.5 °C", "22.1 °F"},
      {Temperature::of_celsius(-0.0), "0.0 °C", "32.0 °F"},
      {TemperatureDifference::of_kelvin(15.8), "15.8 °C", "28.4 °F"},
      {TemperatureDifference::of_kelvin(-10.0), "\u221210.0 °C", "\u221218.0 °F"},
      {HeatingRate::of_celsius_per_hour(143.42), "143.4 °C/h", "258.2 °F/h"},
      {Duration::of_seconds(5700), "1 h 35 min", "1 h 35 min"},
      {Ratio::of(0.52), "0.52", "0.52"},
      {Ratio::of(17.9034), "17.903", "17.903"},
      {Count::of(1585), "1,585", "1,585"},
  };
  for (const Case& c : cases) {
    CHECK(printed(c.quantity, kCelsius) == c.celsius);
    CHECK(printed(c.quantity, kFahrenheit) == c.fahrenheit);
  }
}

TEST_CASE("A limit is printed as it was specified, without zeros that say nothing") {
  CHECK(printed_limit(Temperature::of_celsius(590.0), kCelsius) == "590 °C");
  CHECK(printed_limit(Temperature::of_celsius(590.0), kFahrenheit) == "1094 °F");
  CHECK(printed_limit(TemperatureDifference::of_kelvin(30.0), kFahrenheit) == "54 °F");
  CHECK(printed_limit(HeatingRate::of_celsius_per_hour(144.7368), kCelsius) == "144.74 °C/h");
  CHECK(printed_limit(Duration::of_seconds(90.0), kCelsius) == "1 min 30 s");
  CHECK(printed_limit(Ratio::of(0.5), kCelsius) == "0.5");
  CHECK(printed_limit(Count::of(4), kCelsius) == "4");
}

TEST_CASE("A duration has hours, minutes and seconds, days from 100 h on, and no empty parts") {
  struct Case {
    double seconds;
    int digits;
    const char* text;
  };
  const Case cases[] = {{5712.0, 0, "1 h 35 min 12 s"},
                        {5700.0, 0, "1 h 35 min"},
                        {3600.0, 0, "1 h"},
                        {7200.0, 0, "2 h"},
                        {59.6, 0, "1 min"},
                        {45.0, 0, "45 s"},
                        {0.0, 0, "0 s"},
                        {93'600.0, 0, "26 h"},
                        {259'200.0, 0, "72 h"},
                        {1'000'000.0 - 1.0, 0, "11 d 13 h 46 min 39 s"},
                        {864'000.0, 0, "10 d"},
                        {-180.0, 0, "\u22123 min"},
                        {-0.2, 0, "0 s"},
                        {12.34, 1, "12.3 s"},
                        {3600.05, 2, "1 h 0.05 s"}};
  for (const Case& c : cases) {
    CAPTURE(c.seconds, c.digits);
    CHECK(printed_duration(c.seconds, c.digits) == c.text);
  }
  CHECK(printed(Duration::of_seconds(6.5), kCelsius) == "6.5 s");
  CHECK(printed(Duration::of_seconds(65.4), kCelsius) == "1 min 5 s");
}

TEST_CASE("Numbers keep no zero that says nothing and never print as minus zero") {
  CHECK(short_text(590.0, 2) == "590");
  CHECK(short_text(144.7368, 2) == "144.74");
  CHECK(short_text(-0.001, 2) == "0");
  CHECK(decimal_text(-0.04, 1) == "0.0");
  CHECK(decimal_text(-5.5, 1) == "\u22125.5");
  CHECK(count_text(1'234'567) == "1,234,567");
  CHECK(count_text(-1'234) == "\u22121,234");
  CHECK(count_text(-123) == "\u2212123");
  CHECK(count_text(123) == "123");
}

TEST_CASE("What is printed reads back to the same value") {
  std::mt19937_64 random{20'310'402};
  // Tenths, as a log of one digit has them; rates and shares likewise in their own last digit.
  std::uniform_int_distribution<int> tenths{-9'999, 19'999};
  std::uniform_int_distribution<int> deciseconds{-20'000'000, 20'000'000};
  for (const QuantityFormat& format : {kCelsius, kFahrenheit}) {
    int wrong = 0;
    for (int i = 0; i < kRandom / 2; ++i) {
      const double value = tenths(random) / 10.0;
      const auto temperature = Temperature::of(value, format.unit);
      const auto difference = TemperatureDifference::of(value, format.unit);
      const auto rate = HeatingRate::of(value, format.unit);
      for (const bool limit : {false, true}) {
        const auto text = [&](const Quantity& quantity) {
          return as_typed(limit ? printed_limit(quantity, format) : printed(quantity, format));
        };
        const std::string per_hour = text(rate);
        if (parse_temperature(text(temperature)) != temperature) ++wrong;
        if (parse_difference(text(difference)) != difference) ++wrong;
        if (!per_hour.ends_with("/h")) ++wrong;
        if (parse_difference(per_hour.substr(0, per_hour.size() - 2))->kelvin() != rate.celsius_per_hour())
          ++wrong;
      }
      const double seconds = deciseconds(random) / 10.0;
      if (std::abs(seconds_of(printed_duration(seconds, 1)) - seconds) > 1e-6) ++wrong;
      const double share = tenths(random) / 1000.0;
      if (parse_number(as_typed(printed(Ratio::of(share), format))) != share) ++wrong;
      const std::int64_t count = deciseconds(random);
      std::string grouped = as_typed(printed(Count::of(count), format));
      std::erase(grouped, ',');
      if (parse_number(grouped) != static_cast<double>(count)) ++wrong;
    }
    CHECK(wrong == 0);
  }
}
