// SPDX-License-Identifier: GPL-3.0-or-later
// Emf and temperature against published values of the ITS-90 reference functions.
#include "core/record/its90_reference.h"

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/core/record/its90_points.h"

using namespace soakwright;
using Type = ThermocoupleType;

namespace {

constexpr double kPrinted = 0.0005001;  // half of the last digit printed

constexpr Type kTypes[] = {Type::K, Type::J, Type::N, Type::E, Type::T, Type::R, Type::S, Type::B};

}  // namespace

TEST_CASE("the emf at every published point rounds to the published value") {
  for (const its90::Point& point : its90::kPoints) {
    INFO(letter_of(point.type) << " at " << point.celsius);
    const auto mv = emf_mv(point.type, point.celsius);
    REQUIRE(mv.has_value());
    CHECK(std::fabs(*mv - point.mv) <= kPrinted);
  }
}

TEST_CASE(
    "the temperature at every published emf is the published one, as far as the emf's last digit tells") {
  for (const its90::Point& point : its90::kPoints) {
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
