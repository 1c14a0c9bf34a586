// SPDX-License-Identifier: GPL-3.0-or-later
// When a hold could no longer become long enough: each moment worked by hand beside it.
#include "core/explain/hold_deviation.h"

#include <catch2/catch.hpp>

#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

using HoldCount = HoldStage::Count;

std::string told(const std::vector<Span>& in_range, double wanted_s, HoldCount count = HoldCount::continuous,
                 double begin_s = 0.0) {
  const auto deviation = hold_deviation(in_range, wanted_s, count, begin_s);
  if (!deviation) return "none";
  return say(deviation->at_s) + (deviation->broke_off ? " broke off, " : " nobody in, ") +
         say(deviation->left_s) + " left";
}

}  // namespace

TEST_CASE("A hold that began too late was lost when the last moment to begin passed") {
  // In from 4,000 to 7,000; 5,000 asked: whoever is not in by 2,000 cannot make it.
  CHECK(told({{4000, 7000}}, 5000) == "2000 nobody in, 5000 left");
  // Asked for longer than there was: from the record's first row.
  CHECK(told({{4000, 7000}}, 9000) == "0 nobody in, 7000 left");
}

TEST_CASE("A hold that a dip broke was lost when it broke, if too little time was left then") {
  // 2,000 s, a dip, 3,000 s, left for good at 7,000; 4,000 asked. At 3,000, the last moment to begin, the
  // first time_range ran (since 1,500) and could have gone on: lost at 3,500.
  CHECK(told({{1500, 3500}, {4000, 7000}}, 4000) == "3500 broke off, 3500 left");
  // 3,200 asked: a new hold could have begun up to 3,800, within the dip; it had not by then.
  CHECK(told({{1500, 3500}, {4000, 7000}}, 3200) == "3800 nobody in, 3200 left");
}

TEST_CASE("A hold that is long enough has no deviation") {
  CHECK(told({{4000, 7000}}, 3000) == "none");
  CHECK(told({{100, 200}, {4000, 7000}}, 3000) == "none");
  CHECK(told({}, 3000) == "none");
}

TEST_CASE("A hold that adds up was lost when the time that could be lost was used up") {
  // 1,000 to 2,000, 3,000 to 4,000, 4,500 to 6,000: 3,500 held within 5,000.
  const std::vector<Span> in_range{{1000, 2000}, {3000, 4000}, {4500, 6000}};
  CHECK(told(in_range, 3500, HoldCount::accumulated) == "none");
  // 3,700 asked: 1,300 may be lost; 1,000 went in the first dip, the other 300 by 4,300.
  CHECK(told(in_range, 3700, HoldCount::accumulated) == "4300 nobody in, 1700 left");
  // 4,200 asked: 800 may be lost, gone at 2,800.
  CHECK(told(in_range, 4200, HoldCount::accumulated) == "2800 nobody in, 3200 left");
  // 5,000 asked: not a second to lose when the first dip begins.
  CHECK(told(in_range, 5000, HoldCount::accumulated) == "2000 broke off, 4000 left");
  // 5,500 asked: it would have had to begin at 500.
  CHECK(told(in_range, 5500, HoldCount::accumulated) == "500 nobody in, 5500 left");
}
