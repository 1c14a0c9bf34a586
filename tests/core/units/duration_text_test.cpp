// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/duration_text.h"

#include <catch2/catch.hpp>

using namespace soakwright;

TEST_CASE("durations that are accepted") {
  struct Row {
    const char* text;
    double seconds;
  };
  for (const Row row :
       {Row{"90 s", 90}, Row{"95 min", 5700}, Row{"1.5 h", 5400}, Row{"1 h 35 min", 5700}, Row{"0 s", 0},
        Row{"2h", 7200}, Row{"1h30min", 5400}, Row{" 1 h  2 min 3.5 s ", 3723.5}, Row{"90 min", 5400},
        Row{"0.1 min", 6}, Row{"-5 min", -300}, Row{"2 min 30 s", 150}, Row{"36 h", 129600}}) {
    INFO(row.text);
    CHECK(parse_duration(row.text) == row.seconds);
  }
}

TEST_CASE("durations that are refused") {
  for (const char* const text :
       {"",           "-",       "95",           "min",        "95 minutes",  "1:30",  "1,5 h",
        "35 min 1 h", "1 h 1 h", "1.5 h 10 min", "1 h -5 min", "1 h + 5 min", "1e2 s", "nan s",
        "inf h",      "5 d",     "1 h 35",       "1.2.3 h",    "5 H",         "5 min."}) {
    INFO(text);
    CHECK_FALSE(parse_duration(text).has_value());
  }
}
