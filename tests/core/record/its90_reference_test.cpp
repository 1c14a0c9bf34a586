// SPDX-License-Identifier: GPL-3.0-or-later
// Emf and temperature against published values of the ITS-90 reference functions.
#include "core/record/its90_reference.h"

#include <cmath>

#include <catch2/catch.hpp>

using namespace soakwright;
using Type = ThermocoupleType;

namespace {

struct Point {
  Type type;
  double celsius;
  double mv;
};

// NIST Monograph 175 (1993), tables of the reference functions, printed to 0.001 mV with the junction at 0 C.
constexpr Point kPoints[] = {
    {Type::K, -200, -5.891},
    {Type::K, -100, -3.554},
    {Type::K, -40, -1.527},
    {Type::K, 0, 0.000},
    {Type::K, 25, 1.000},
    {Type::K, 100, 4.096},
    {Type::K, 200, 8.138},
    {Type::K, 315, 12.831},
    {Type::K, 425, 17.455},
    {Type::K, 600, 24.905},
    {Type::K, 720, 29.965},
    {Type::K, 1000, 41.276},
    {Type::J, -200, -7.890},
    {Type::J, -100, -4.633},
    {Type::J, -40, -1.961},
    {Type::J, 0, 0.000},
    {Type::J, 25, 1.277},
    {Type::J, 100, 5.269},
    {Type::J, 200, 10.779},
    {Type::J, 300, 16.327},
    {Type::J, 425, 23.228},
    {Type::J, 600, 33.102},
    {Type::J, 720, 40.382},
    {Type::J, 1000, 57.953},
    {Type::N, -200, -3.990},
    {Type::N, -100, -2.407},
    {Type::N, -40, -1.023},
    {Type::N, 0, 0.000},
    {Type::N, 25, 0.659},
    {Type::N, 100, 2.774},
    {Type::N, 200, 5.913},
    {Type::N, 315, 9.875},
    {Type::N, 425, 13.906},
    {Type::N, 600, 20.613},
    {Type::N, 720, 25.312},
    {Type::N, 1000, 36.256},
    {Type::E, -200, -8.825},
    {Type::E, -100, -5.237},
    {Type::E, -40, -2.255},
    {Type::E, 0, 0.000},
    {Type::E, 25, 1.495},
    {Type::E, 100, 6.319},
    {Type::E, 200, 13.421},
    {Type::E, 300, 21.036},
    {Type::E, 425, 30.952},
    {Type::E, 600, 45.093},
    {Type::E, 720, 54.703},
    {Type::E, 1000, 76.373},
    {Type::T, -200, -5.603},
    {Type::T, -100, -3.379},
    {Type::T, -40, -1.475},
    {Type::T, 0, 0.000},
    {Type::T, 25, 0.992},
    {Type::T, 50, 2.036},
    {Type::T, 100, 4.279},
    {Type::T, 200, 9.288},
    {Type::T, 300, 14.862},
    {Type::T, 350, 17.819},
    {Type::T, 400, 20.872},
    {Type::R, -50, -0.226},
    {Type::R, 0, 0.000},
    {Type::R, 25, 0.141},
    {Type::R, 100, 0.647},
    {Type::R, 200, 1.469},
    {Type::R, 300, 2.401},
    {Type::R, 425, 3.669},
    {Type::R, 600, 5.583},
    {Type::R, 720, 6.980},
    {Type::R, 1000, 10.506},
    {Type::R, 1200, 13.228},
    {Type::R, 1600, 18.849},
    {Type::S, -50, -0.236},
    {Type::S, 0, 0.000},
    {Type::S, 25, 0.143},
    {Type::S, 100, 0.646},
    {Type::S, 200, 1.441},
    {Type::S, 300, 2.323},
    {Type::S, 425, 3.500},
    {Type::S, 600, 5.239},
    {Type::S, 720, 6.486},
    {Type::S, 1000, 9.587},
    {Type::S, 1200, 11.951},
    {Type::S, 1600, 16.777},
    {Type::B, 50, 0.002},
    {Type::B, 100, 0.033},
    {Type::B, 200, 0.178},
    {Type::B, 300, 0.431},
    {Type::B, 425, 0.891},
    {Type::B, 600, 1.792},
    {Type::B, 720, 2.569},
    {Type::B, 1000, 4.834},
    {Type::B, 1200, 6.786},
    {Type::B, 1500, 10.099},
    {Type::B, 1800, 13.591},
    // The same tables at 350 C, and the far ends.
    {Type::B, 350, 0.596},
    {Type::E, 350, 24.964},
    {Type::J, 350, 19.090},
    {Type::K, 350, 14.293},
    {Type::N, 350, 11.136},
    {Type::R, 350, 2.896},
    {Type::S, 350, 2.786},
    {Type::T, 350, 17.819},
    {Type::K, 300, 12.209},
    {Type::S, 1400, 14.373},
    {Type::T, -270, -6.258},
    {Type::K, -200, -5.891},
};
constexpr double kPrinted = 0.0005001;  // half of the last digit printed

constexpr Type kTypes[] = {Type::K, Type::J, Type::N, Type::E, Type::T, Type::R, Type::S, Type::B};

}  // namespace

TEST_CASE("the emf at every published point rounds to the published value") {
  for (const Point& point : kPoints) {
    INFO(letter_of(point.type) << " at " << point.celsius);
    const auto mv = emf_mv(point.type, point.celsius);
    REQUIRE(mv.has_value());
    CHECK(std::fabs(*mv - point.mv) <= kPrinted);
  }
}

TEST_CASE(
    "the temperature at every published emf is the published one, as far as the emf's last digit tells") {
  for (const Point& point : kPoints) {
    if (point.celsius < emf_range(point.type).from_c) continue;  // type B below 42.2 C
    INFO(letter_of(point.type) << " at " << point.mv << " mV");
    const auto celsius = celsius_of_emf(point.type, point.mv, 20.0);
    // At the very end of a range the rounded value can lie outside it.
    if (!celsius) {
      const auto range = emf_range(point.type);
      CHECK((point.celsius == range.from_c || point.celsius == range.to_c));
      continue;
    }
    const double slope = emf_slope_mv_per_k(point.type, point.celsius);
    CHECK(std::fabs(*celsius - point.celsius) <= 1.1 * kPrinted / slope);
  }
}

TEST_CASE("emf rises over each type's whole range and comes back as the temperature that made it") {
  for (const Type type : kTypes) {
    const EmfRange range = emf_range(type);
    double before = *emf_mv(type, range.from_c);
    constexpr double kStep = 0.37;
    const auto steps = static_cast<int>((range.to_c - range.from_c) / kStep);
    for (int i = 1; i <= steps; ++i) {
      const double t = range.from_c + kStep * i;
      INFO(letter_of(type) << " at " << t);
      const double mv = *emf_mv(type, t);
      REQUIRE(mv > before);
      before = mv;
      for (const double near : {t, 20.0, 1500.0}) {
        const auto back = celsius_of_emf(type, mv, near);
        REQUIRE(back.has_value());
        REQUIRE(std::fabs(*back - t) < 0.001);  // 0.01 is required
      }
    }
  }
}

TEST_CASE("the ranges are those of the reference functions, and nothing is told beyond them") {
  struct Range {
    Type type;
    double from_c, to_c;
  };
  // NIST Monograph 175; type B from where its emf is zero again.
  const Range table[] = {{Type::K, -270, 1372},  {Type::J, -210, 1200}, {Type::N, -270, 1300},
                         {Type::E, -270, 1000},  {Type::T, -270, 400},  {Type::R, -50, 1768.1},
                         {Type::S, -50, 1768.1}, {Type::B, 42.2, 1820}};
  for (const Range& entry : table) {
    INFO(letter_of(entry.type));
    CHECK(emf_range(entry.type).from_c == entry.from_c);
    CHECK(emf_range(entry.type).to_c == entry.to_c);
    const double lowest = *emf_mv(entry.type, entry.from_c);
    const double highest = *emf_mv(entry.type, entry.to_c);
    CHECK(celsius_of_emf(entry.type, lowest, 0.0).has_value());
    CHECK(celsius_of_emf(entry.type, highest, 0.0).has_value());
    CHECK_FALSE(celsius_of_emf(entry.type, lowest - 0.01, 0.0).has_value());
    CHECK_FALSE(celsius_of_emf(entry.type, highest + 0.01, 0.0).has_value());
    CHECK_FALSE(celsius_of_emf(entry.type, std::nan(""), 0.0).has_value());
    CHECK_FALSE(emf_mv(entry.type, entry.to_c + 0.1).has_value());
  }
}

TEST_CASE("what goes wrong in practice has the size that the tables give") {
  // Terminals at 25 C (1.000 mV): 4.096 mV is 124.3 C, and not the 100 C of the table.
  CHECK(*celsius_of_emf(Type::K, 4.096 + *emf_mv(Type::K, 25.0), 100.0) == Approx(124.3).margin(0.05));
  // The wrong type for a junction at 600 C.
  CHECK(*celsius_of_emf(Type::N, *emf_mv(Type::K, 600.0), 600.0) == Approx(709.6).margin(0.05));
  CHECK(*celsius_of_emf(Type::K, *emf_mv(Type::N, 600.0), 600.0) == Approx(499.3).margin(0.05));
  CHECK(*celsius_of_emf(Type::J, *emf_mv(Type::K, 600.0), 600.0) == Approx(455.3).margin(0.05));
  // Type B: zero at 0 C and again at 42.2 C, and below zero between.
  CHECK(*emf_mv(Type::B, 0.0) == 0.0);
  CHECK(std::fabs(*emf_mv(Type::B, 42.2)) < 0.0005);
  CHECK(*emf_mv(Type::B, 21.0) < 0.0);
  CHECK_FALSE(celsius_of_emf(Type::B, -0.002, 30.0).has_value());
}
