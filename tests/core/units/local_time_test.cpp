// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/local_time.h"

#include <catch2/catch.hpp>

using namespace soakwright;

TEST_CASE("days are counted as the Gregorian calendar counts them") {
  // Values of Python's datetime.date (proleptic Gregorian), by its toordinal().
  struct Row {
    CivilDate date;
    std::int64_t days;
  };
  for (const Row row : {Row{{1678, 1, 1}, -106650}, Row{{1900, 2, 28}, -25509}, Row{{1969, 12, 31}, -1},
                        Row{{1970, 1, 1}, 0}, Row{{2000, 2, 29}, 11016}, Row{{2031, 4, 2}, 22371},
                        Row{{2038, 1, 19}, 24855}, Row{{2261, 12, 31}, 106650}}) {
    CHECK(days_from_civil(row.date) == row.days);
    CHECK(civil_from_days(row.days) == row.date);
  }
}

TEST_CASE("a well-known second of the epoch is where it is known to be") {
  // POSIX: 1 000 000 000 s after the epoch is 2001-09-09T01:46:40; 2^31 - 1 is 2038-01-19T03:14:07.
  CHECK(LocalTime::of({2001, 9, 9}, 1, 46, 40)->nanoseconds() == 1'000'000'000 * kNanosecondsPerSecond);
  CHECK(LocalTime::of({2038, 1, 19}, 3, 14, 7)->nanoseconds() == 2'147'483'647 * kNanosecondsPerSecond);
}

TEST_CASE("dates and times that do not exist are refused") {
  CHECK(date_exists({2000, 2, 29}));
  CHECK(date_exists({2032, 2, 29}));
  CHECK_FALSE(date_exists({1900, 2, 29}));
  CHECK_FALSE(date_exists({2031, 2, 29}));
  CHECK_FALSE(date_exists({2031, 4, 31}));
  CHECK_FALSE(date_exists({2031, 13, 1}));
  CHECK_FALSE(date_exists({2031, 0, 1}));
  CHECK_FALSE(date_exists({1677, 12, 31}));
  CHECK_FALSE(LocalTime::of({2031, 4, 2}, 24, 0, 0).has_value());
  CHECK_FALSE(LocalTime::of({2031, 4, 2}, 23, 60, 0).has_value());
  CHECK_FALSE(LocalTime::of({2031, 4, 2}, 23, 59, 60).has_value());
}

TEST_CASE("local times that are accepted, as they print") {
  struct Row {
    const char* text;
    const char* iso;
  };
  for (const Row row :
       {Row{"2031-04-02 13:10", "2031-04-02T13:10:00"}, Row{"2031-04-02T13:10:05", "2031-04-02T13:10:05"},
        Row{"2031-04-02 13:10:05.5", "2031-04-02T13:10:05.500"}, Row{"2031-04-02", "2031-04-02T00:00:00"},
        Row{"1969-12-31 23:59:59.25", "1969-12-31T23:59:59.250"},
        Row{"2032-02-29 00:00:00.9996", "2032-02-29T00:00:01"}}) {
    INFO(row.text);
    REQUIRE(parse_local_time(row.text).has_value());
    CHECK(parse_local_time(row.text)->iso() == row.iso);
  }
}

TEST_CASE("local times that are refused") {
  for (const char* const text :
       {"", "2031-4-2 13:10", "02.04.2031 13:10", "2031-04-02 13", "2031-04-02 1:10", "2031-04-02 13:10Z",
        "2031-04-02 13:10:", "2031-04-02 13:10:05.", "2031-04-31 13:10", "2031-04-02  13:10", "13:10"}) {
    INFO(text);
    CHECK_FALSE(parse_local_time(text).has_value());
  }
}

TEST_CASE("seconds between moments are exact across a year end and a leap day") {
  const auto at = [](const char* text) { return parse_local_time(text).value(); };
  CHECK(at("2032-01-01 00:00").seconds_since(at("2031-12-31 23:59:50")) == 10.0);
  CHECK(at("2032-03-01 00:00").seconds_since(at("2032-02-28 00:00")) == 172800.0);
  CHECK(at("2031-04-02 06:00").plus_seconds(86399.5).iso() == "2031-04-03T05:59:59.500");
  CHECK(at("2031-04-02 06:00").plus_seconds(-3600.0).date() == CivilDate{2031, 4, 2});
}
