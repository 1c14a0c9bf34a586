// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/time/time_stamp.h"

#include <string>

#include <catch2/catch.hpp>

#include "core/read/log_file.h"
#include "core/units/local_time.h"
#include "tests/core/read/written_log.h"

using namespace soakwright;

namespace {

/// The stamp as ISO text under one order; empty where there is none.
std::string iso(const char* text, FieldOrder order) {
  const auto stamp = parse_stamp(text);
  if (!stamp || !stamp->date || !stamp->clock_ns) return {};
  const auto day = day_number(*stamp->date, order);
  if (!day) return {};
  return LocalTime::of_nanoseconds(*day * 86'400 * kNanosecondsPerSecond + *stamp->clock_ns).iso();
}

struct Written {
  const char* text;
  FieldOrder order;
  const char* iso;
};

struct Refused {
  const char* text;
  FieldOrder order;
  const char* why;
};

const Refused kRefused[] = {
    {"2031-04-31 06:00:00", FieldOrder::ymd, "no such day"},
    {"2031-02-29 06:00:00", FieldOrder::ymd, "no leap year"},
    {"17/13/2031 06:00", FieldOrder::dmy, "no such month"},
    {"04/17/2031 06:00", FieldOrder::dmy, "no such month in this order"},
    {"2031-04-02 25:00:00", FieldOrder::ymd, "no such hour"},
    {"2031-04-02 06:60:00", FieldOrder::ymd, "no such minute"},
    {"2031-04-02 06:00:61", FieldOrder::ymd, "no such second"},
    {"2031-04-02 24:00:01", FieldOrder::ymd, "after midnight"},
    {"4/2/2031 13:00 PM", FieldOrder::mdy, "13 of 12 hours"},
    {"4/2/2031 0:10 AM", FieldOrder::mdy, "0 of 12 hours"},
    {"2031-04-02", FieldOrder::ymd, "no time"},
    {"06:00:00", FieldOrder::ymd, "no date"},
    {"2031-04-0206:00:00", FieldOrder::ymd, "nothing between date and time"},
    {"2031-04/02 06:00:00", FieldOrder::ymd, "two separators"},
    {"2031-04-02 06:00:00 x", FieldOrder::ymd, "text behind it"},
    {"2 Foo 2031 06:00", FieldOrder::dmy, "no month"},
    {"2/4/131 06:00", FieldOrder::dmy, "a year of three digits"},
    {"", FieldOrder::ymd, "nothing"},
    {"17.9", FieldOrder::dmy, "a number"},
};

/// Rows in the order of `refused`, and its text as the time of line 4.
std::string log_with(const Refused& refused) {
  const char* const day = refused.order == FieldOrder::ymd   ? "2031-04-17"
                          : refused.order == FieldOrder::dmy ? "17/04/2031"
                                                             : "04/17/2031";
  const auto row = [day](const char* clock) { return std::string{day} + " " + clock + ";20.5\n"; };
  std::string log = "Time;TC1\n" + row("06:00:00") + row("06:01:00") + refused.text + ";20.5\n";
  for (const char* clock : {"06:03:00", "06:04:00", "06:05:00", "06:06:00", "06:07:00"}) log += row(clock);
  return log;
}

}  // namespace

TEST_CASE("dates with times are read in every writing of the trade") {
  const Written table[] = {
      // ISO 8601-1:2019
      {"2031-04-02T06:00:00", FieldOrder::ymd, "2031-04-02T06:00:00"},
      {"2031-04-02 06:00:00", FieldOrder::ymd, "2031-04-02T06:00:00"},
      {"2031-04-02 06:00", FieldOrder::ymd, "2031-04-02T06:00:00"},
      {"2031-04-02T06:00:00.25", FieldOrder::ymd, "2031-04-02T06:00:00.250"},
      {"2031-04-02T06:00:00,25", FieldOrder::ymd, "2031-04-02T06:00:00.250"},
      {"2031-04-02T06:00:00Z", FieldOrder::ymd, "2031-04-02T06:00:00"},
      {"2031-04-02T06:00:00+02:00", FieldOrder::ymd, "2031-04-02T06:00:00"},
      {"2031-04-02T24:00:00", FieldOrder::ymd, "2031-04-03T00:00:00"},
      {"20310402T060000", FieldOrder::ymd, "2031-04-02T06:00:00"},
      // as recorders and spreadsheets of several countries write them: common practice, no source
      {"02/04/2031 06:00:00", FieldOrder::dmy, "2031-04-02T06:00:00"},
      {"02/04/2031 06:00:00", FieldOrder::mdy, "2031-02-04T06:00:00"},
      {"2.4.2031 6:00", FieldOrder::dmy, "2031-04-02T06:00:00"},
      {"02-04-31 06:00:00", FieldOrder::dmy, "2031-04-02T06:00:00"},
      {"04/02/31 06:00", FieldOrder::mdy, "2031-04-02T06:00:00"},
      {"31/04/02 06:00", FieldOrder::ymd, "2031-04-02T06:00:00"},
      {"2031/04/02 06:00:00", FieldOrder::ymd, "2031-04-02T06:00:00"},
      {"2 Apr 2031 06:00", FieldOrder::dmy, "2031-04-02T06:00:00"},
      {"02-APR-31 06:00:00", FieldOrder::dmy, "2031-04-02T06:00:00"},
      {"April 2, 2031 6:00 PM", FieldOrder::mdy, "2031-04-02T18:00:00"},
      {"Wed, 2 April 2031 06:00:00", FieldOrder::dmy, "2031-04-02T06:00:00"},
      {"2031-Apr-02 06:00:00", FieldOrder::ymd, "2031-04-02T06:00:00"},
      {"30-Sept-2031 06:00:00", FieldOrder::dmy, "2031-09-30T06:00:00"},
      {"4/2/2031 12:00:00 AM", FieldOrder::mdy, "2031-04-02T00:00:00"},
      {"4/2/2031 12:30 PM", FieldOrder::mdy, "2031-04-02T12:30:00"},
      {"4/2/2031 1:05:09 p.m.", FieldOrder::mdy, "2031-04-02T13:05:09"},
      {"06:00:00 02.04.2031", FieldOrder::dmy, "2031-04-02T06:00:00"},
      {"29/02/2032 06:00", FieldOrder::dmy, "2032-02-29T06:00:00"},
      {"31/12/69 06:00", FieldOrder::dmy, "2069-12-31T06:00:00"},
  };
  for (const Written& entry : table) {
    INFO(entry.text);
    CHECK(iso(entry.text, entry.order) == entry.iso);
  }
}

TEST_CASE("what is no date with a time is refused") {
  for (const Refused& entry : kRefused) {
    INFO(entry.text << ": " << entry.why);
    CHECK(iso(entry.text, entry.order).empty());
  }
}

TEST_CASE("a refused time stamp is named with its line and its text") {
  for (const Refused& entry : kRefused) {
    INFO(entry.text << ": " << entry.why);
    const WrittenLog log{log_with(entry)};
    const auto read = read_log(log.path(), {});
    if (!read) {
      // A date that is written as one and exists in no order.
      const Problem& problem = read.problems().front();
      INFO(problem.text());
      CHECK(problem.line == 4);
      CHECK(problem.what.find("no date") != std::string::npos);
      continue;
    }
    CHECK(read.value().rows() == 7);
    CHECK(read.value().odd_lines.count == 1);
    CHECK(read.value().odd_lines.line == 4);
    CHECK(read.value().odd_lines.text == std::string{entry.text} + ";20.5");
  }
}

TEST_CASE("elapsed time counts hours beyond a day") {
  constexpr std::int64_t kSecond = kNanosecondsPerSecond;
  CHECK(parse_elapsed("0:00:10") == 10 * kSecond);
  CHECK(parse_elapsed("25:10:00") == 90'600 * kSecond);
  CHECK(parse_elapsed("-0:01:00") == -60 * kSecond);
  CHECK(parse_elapsed("100:00:00.5") == 360'000 * kSecond + kSecond / 2);
  CHECK_FALSE(parse_elapsed("1:60:00"));
  CHECK_FALSE(parse_elapsed("1:00:60"));
  CHECK_FALSE(parse_elapsed("12"));
  CHECK_FALSE(parse_elapsed("1:00:00 h"));
}
