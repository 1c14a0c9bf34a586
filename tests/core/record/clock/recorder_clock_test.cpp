// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/clock/recorder_clock.h"

#include <catch2/catch.hpp>

using namespace soakwright;

namespace {

constexpr std::int64_t kSecond = kNanosecondsPerSecond;

LocalTime local(const char* text) { return parse_local_time(text).value(); }

RecorderClock time_of_day(std::int64_t seconds) {
  return {RecorderClock::Kind::time_of_day, seconds * kSecond};
}
RecorderClock elapsed(std::int64_t seconds) { return {RecorderClock::Kind::elapsed, seconds * kSecond}; }

/// 01:30 at the first sample; an hour later it is put back from 02:30 to 01:30.
RecorderClock put_back() {
  RecorderClock clock = RecorderClock::dated(local("2031-10-26 01:30"));
  clock.put(3600.0, local("2031-10-26 01:30").nanoseconds());
  return clock;
}

}  // namespace

TEST_CASE("a moment is said as the recorder showed it") {
  struct Case {
    RecorderClock clock;
    double at_s;
    const char* text;
    const char* iso;
  };
  const Case cases[] = {
      {RecorderClock::dated(local("2031-04-02 06:00")), 25'810.0, "2031-04-02 13:10:10",
       "2031-04-02T13:10:10"},
      {RecorderClock::dated(local("2031-04-02 23:59:59.5")), 0.5, "2031-04-03 00:00:00",
       "2031-04-03T00:00:00"},
      {RecorderClock::dated(local("2031-04-02 23:59:59.5")), 0.0, "2031-04-03 00:00:00",
       "2031-04-02T23:59:59.500"},
      {RecorderClock::dated(local("2031-04-02 06:00")), 0.25, "2031-04-02 06:00:00",
       "2031-04-02T06:00:00.250"},
      {time_of_day(41'385), 0.0, "11:29:45", "11:29:45"},
      {time_of_day(79'200), 7800.0, "+1 d 00:10:00", "+1 d 00:10:00"},
      {time_of_day(79'200), 7199.9996, "+1 d 00:00:00", "+1 d 00:00:00"},
      {time_of_day(0), 2.0 * 86'400.0 + 61.0, "+2 d 00:01:01", "+2 d 00:01:01"},
      {time_of_day(60), -61.0, "−1 d 23:59:59", "-1 d 23:59:59"},
      {elapsed(747), 0.0, "0:12:27", "0:12:27"},
      {elapsed(0), 360'061.0, "100:01:01", "100:01:01"},
      {elapsed(-90), 0.0, "−0:01:30", "-0:01:30"},
      {elapsed(-90), 89.75, "0:00:00", "-0:00:00.250"},
  };
  for (const Case& c : cases) {
    INFO(c.text);
    CHECK(c.clock.text(c.at_s) == c.text);
    CHECK(c.clock.iso(c.at_s) == c.iso);
  }
  CHECK(elapsed(0).text(59.96, 1) == "0:01:00.0");
  CHECK(elapsed(0).text(59.94, 1) == "0:00:59.9");
}

TEST_CASE("after the clock was put back, moments are said as it showed them then") {
  const RecorderClock clock = put_back();
  CHECK(clock.text(3599.0) == "2031-10-26 02:29:59");
  CHECK(clock.text(3600.0) == "2031-10-26 01:30:00");
  CHECK(clock.text(7200.0) == "2031-10-26 02:30:00");
  CHECK(clock.local_time(3600.0) == local("2031-10-26 01:30"));
  CHECK_FALSE(elapsed(0).local_time(0.0).has_value());
}

TEST_CASE(
    "what the clock showed twice has two places, and what it never showed has the place where it was moved") {
  const RecorderClock back = put_back();
  CHECK(back.places_of(local("2031-10-26 02:00").nanoseconds()) == std::vector<double>{1800.0, 5400.0});
  CHECK(back.places_of(local("2031-10-26 02:30").nanoseconds()) == std::vector<double>{7200.0});
  CHECK(back.places_of(local("2031-10-26 01:00").nanoseconds()) == std::vector<double>{-1800.0});
  RecorderClock forward = RecorderClock::dated(local("2031-03-30 01:30"));
  forward.put(1800.0, local("2031-03-30 03:00").nanoseconds());
  CHECK(forward.places_of(local("2031-03-30 02:30").nanoseconds()) == std::vector<double>{1800.0});
  CHECK(forward.places_of(local("2031-03-30 03:10").nanoseconds()) == std::vector<double>{2400.0});
}

TEST_CASE("round moments are round on the recorder's clock, and no two stand together") {
  CHECK(elapsed(747).round_moments(0.0, 200.0, 60.0) == std::vector<double>{33.0, 93.0, 153.0});
  CHECK(time_of_day(21'590).round_moments(0.0, 3700.0, 1800.0) == std::vector<double>{10.0, 1810.0, 3610.0});
  CHECK(time_of_day(21'590).round_moments(-3600.0, 20.0, 1800.0) ==
        std::vector<double>{-3590.0, -1790.0, 10.0});
  // Put back by 45 s at 100 s: the next full minute is 45 s later than it would be.
  RecorderClock clock = time_of_day(0);
  clock.put(100.0, 55 * kSecond);
  CHECK(clock.round_moments(0.0, 250.0, 60.0) == std::vector<double>{0.0, 60.0, 105.0, 165.0, 225.0});
  // Put back by 20 s just behind a full minute: the second 01:00 would stand on the first.
  RecorderClock near = time_of_day(0);
  near.put(61.0, 41 * kSecond);
  CHECK(near.round_moments(0.0, 150.0, 60.0) == std::vector<double>{0.0, 60.0, 140.0});
}
