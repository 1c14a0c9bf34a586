// SPDX-License-Identifier: GPL-3.0-or-later
// Sources: the definition of the median, by sorting.
#include "core/phases/robust.h"

#include <algorithm>
#include <cmath>
#include <random>

#include <catch2/catch.hpp>

namespace {

double by_sorting(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t half = values.size() / 2;
  return values.size() % 2 == 1 ? values[half] : 0.5 * (values[half - 1] + values[half]);
}

}  // namespace

TEST_CASE("the median of many values is the one that sorting gives") {
  std::mt19937 random(5);
  for (const std::size_t count : {1U, 2U, 7U, 64U, 511U, 512U, 513U, 1000U, 2401U, 5000U})
    for (int kind = 0; kind < 6; ++kind) {
      std::vector<double> values(count);
      std::normal_distribution<double> normal(20.0, 3.0);
      for (std::size_t i = 0; i < count; ++i) {
        const double value = normal(random);
        switch (kind) {
          case 0:
            values[i] = value;
            break;
          case 1:  // many ties
            values[i] = std::round(value);
            break;
          case 2:  // hardly anything else
            values[i] = i % 97 == 3 ? value : 1.0;
            break;
          case 3:  // sorted
            values[i] = static_cast<double>(i);
            break;
          case 4:  // what is looked at first says nothing of the rest
            values[i] = i % 2 == 0 ? value : -value;
            break;
          default:  // the smaller half and the larger half
            values[i] = i < count / 2 ? -1.0 : 1.0;
        }
      }
      INFO(count << " values of kind " << kind);
      CHECK(soakwright::median_of(values) == by_sorting(values));
    }
  CHECK(soakwright::median_of({}) == 0.0);
}
