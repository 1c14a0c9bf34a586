// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/printed_time.h"

#include <catch2/catch.hpp>

#include "core/units/local_time.h"

using namespace soakwright;

TEST_CASE("a time is read as a log without dates prints it") {
  struct Case {
    const char* text;
    double seconds;
    bool has_seconds;
  };
  const Case cases[] = {
      {"11:29:45", 41'385.0, true},   {"13:10", 47'400.0, false},         {"0:09:30", 570.0, true},
      {"100:00:00", 360'000.0, true}, {"+1 d 00:10:00", 87'000.0, true},  {"1 d 00:10", 87'000.0, false},
      {"−1 d 23:59:59", -1.0, true},  {"-1 d 23:59:59", -1.0, true},      {"-0:01:30", -90.0, true},
      {"−0:01:30.5", -90.5, true},    {" 06:00:00.25 ", 21'600.25, true},
  };
  for (const Case& c : cases) {
    INFO(c.text);
    const auto time = parse_printed_time(c.text);
    REQUIRE(time.has_value());
    CHECK(static_cast<double>(time->nanoseconds) / static_cast<double>(kNanosecondsPerSecond) == c.seconds);
    CHECK(time->has_seconds == c.has_seconds);
  }
}

TEST_CASE("what is no printed time is refused") {
  for (const char* text : {"", "13", "13:1", "13:60", "13:10:60", "13:10:", "13:10:05.", "13:10:05x",
                           "+00:10:00", "+1 d", "+1 d 24:00:00", "1 day 00:10:00", "--0:01:30",
                           "2031-04-02 13:10", "1234567:00:00", "10000 d 00:00:00"}) {
    INFO(text);
    CHECK_FALSE(parse_printed_time(text).has_value());
  }
}
