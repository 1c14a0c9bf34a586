// SPDX-License-Identifier: GPL-3.0-or-later
// The published tolerance tables, from IEC 60584-1 and ASTM E230 as printed in several independent copies.
#include "core/uncertainty/tolerance_table.h"

#include <vector>

#include <catch2/catch.hpp>

using namespace soakwright;

namespace {

using Type = ThermocoupleType;
using Kind = Tolerance::Kind;

double half_width(Type type, Kind kind, double celsius) {
  const auto table = published_tolerance(type, kind);
  REQUIRE(table);
  const auto size = table->at(celsius);
  REQUIRE(size);
  return *size;
}

}  // namespace

TEST_CASE("A published tolerance is the greater of a fixed value and a share of the reading") {
  struct Case {
    Type type;
    Kind kind;
    double celsius;
    double half_width;
  };
  const std::vector<Case> cases = {
      // K at 620 °C, worked: class 1 ±2.48, class 2 ±4.65, standard ±4.65, special ±2.48.
      {Type::K, Kind::class_1, 620, 2.48},
      {Type::K, Kind::class_2, 620, 4.65},
      {Type::K, Kind::standard, 620, 4.65},
      {Type::K, Kind::special, 620, 2.48},
      // Where the fixed value and the share meet: 1.5 / 0.4 % = 375 °C, 2.5 / 0.75 % = 333.3 °C.
      {Type::K, Kind::class_1, 20, 1.5},
      {Type::K, Kind::class_1, 375, 1.5},
      {Type::K, Kind::class_1, 376, 1.504},
      {Type::N, Kind::class_2, 300, 2.5},
      {Type::K, Kind::special, 20, 1.1},
      {Type::N, Kind::standard, 20, 2.2},
      {Type::J, Kind::class_1, 700, 2.8},
      {Type::J, Kind::standard, 100, 2.2},
      {Type::E, Kind::class_2, 800, 6.0},
      {Type::E, Kind::standard, 100, 1.7},
      {Type::E, Kind::standard, 600, 3.0},
      {Type::E, Kind::special, 100, 1.0},
      {Type::T, Kind::class_1, 100, 0.5},
      {Type::T, Kind::class_2, 350, 2.625},
      {Type::R, Kind::class_1, 1000, 1.0},
      {Type::S, Kind::class_1, 1300, 1.6},  // 1 + 0.003 · 200
      {Type::S, Kind::class_2, 1000, 2.5},
      {Type::R, Kind::special, 500, 0.6},
      {Type::S, Kind::standard, 600, 1.5},
      {Type::B, Kind::class_2, 800, 2.0},
      {Type::B, Kind::standard, 1000, 5.0},
  };
  for (const Case& c : cases) {
    CAPTURE(type_name(c.type), class_name(c.kind), c.celsius);
    CHECK(half_width(c.type, c.kind, c.celsius) == Approx(c.half_width).epsilon(1e-12));
  }
}

TEST_CASE("Beyond the range of its table a class says nothing") {
  const auto says = [](Type type, Kind kind, double celsius) {
    return published_tolerance(type, kind).value().at(celsius).has_value();
  };
  CHECK(says(Type::K, Kind::class_1, 1000));
  CHECK_FALSE(says(Type::K, Kind::class_1, 1000.5));
  CHECK(says(Type::K, Kind::class_2, 1000.5));
  CHECK_FALSE(says(Type::J, Kind::special, 761));
  CHECK_FALSE(says(Type::B, Kind::class_2, 599));
  CHECK(says(Type::B, Kind::class_2, 600));
  CHECK(says(Type::K, Kind::class_1, -10));
}

TEST_CASE("Type B has neither class 1 nor a special grade") {
  CHECK_FALSE(published_tolerance(Type::B, Kind::class_1));
  CHECK_FALSE(published_tolerance(Type::B, Kind::special));
  CHECK(published_tolerance(Type::B, Kind::class_2));
}
