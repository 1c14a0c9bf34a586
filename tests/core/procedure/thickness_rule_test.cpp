// Thickness rules against the worked figures of published codes.
#include "core/procedure/thickness_rule.h"

#include <catch2/catch.hpp>

#include "core/procedure/procedure.h"

using namespace soakwright;

namespace {

constexpr TemperatureUnit kF = TemperatureUnit::fahrenheit;
constexpr TemperatureUnit kC = TemperatureUnit::celsius;
constexpr LengthUnit kInch = LengthUnit::inch;
constexpr LengthUnit kMm = LengthUnit::millimetre;

HeatingRate fahrenheit_per_hour(double rate) { return HeatingRate::of(rate, kF); }
HeatingRate celsius_per_hour(double rate) { return HeatingRate::of(rate, kC); }
double minutes(double count) { return count * 60.0; }

}  // namespace

TEST_CASE("the rates of UCS-56 come out in F/h at every worked thickness") {
  // ASME BPVC VIII-1 UCS-56(d): 400 (heating) and 500 F/h (cooling) divided by the thickness in inches, at most 400 and
  // 500, need not be below 100. Figures worked from that text.
  const RateRule heating{fahrenheit_per_hour(400), kInch, fahrenheit_per_hour(100), fahrenheit_per_hour(400)};
  const RateRule cooling{fahrenheit_per_hour(500), kInch, fahrenheit_per_hour(100), fahrenheit_per_hour(500)};
  struct Row {
    double inches, heating, cooling;
  };
  for (const Row row : {Row{0.5, 400, 500}, Row{1, 400, 500}, Row{2, 200, 250}, Row{4, 100, 125}, Row{5, 100, 100}}) {
    const Thickness thickness = Thickness::of(row.inches, kInch);
    CHECK(heating.at(thickness).in(kF) == Approx(row.heating).epsilon(1e-12));
    CHECK(cooling.at(thickness).in(kF) == Approx(row.cooling).epsilon(1e-12));
  }
}
