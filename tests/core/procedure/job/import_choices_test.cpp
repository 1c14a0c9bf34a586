// SPDX-License-Identifier: GPL-3.0-or-later
// What a person may settle about a log in [import], and what is refused there.
#include <string>
#include <utility>

#include <catch2/catch.hpp>

#include "tests/core/procedure/job/parsed_job.h"

using namespace soakwright;
using namespace soakwright::given_job;

TEST_CASE("each way to read a log can be given") {
  using Encoding = LogEncoding;
  using Time = TimeMeaning;
  const auto given = [](const std::string& line) { return job("[import]\n" + line).reading; };
  const std::pair<const char*, Encoding> encodings[] = {{"utf-8", Encoding::utf_8},
                                                        {"utf-16le", Encoding::utf_16_le},
                                                        {"utf-16be", Encoding::utf_16_be},
                                                        {"windows-1252", Encoding::windows_1252}};
  for (const auto& [word, encoding] : encodings)
    CHECK(given("encoding = \"" + std::string{word} + "\"").encoding == encoding);
  const std::pair<const char*, char> delimiters[] = {
      {",", ','}, {";", ';'}, {"tab", '\t'}, {"|", '|'}, {"spaces", ' '}};
  for (const auto& [word, delimiter] : delimiters)
    CHECK(given("delimiter = \"" + std::string{word} + "\"").delimiter == delimiter);
  const std::pair<const char*, Time> times[] = {
      {"date and time", Time::date_time}, {"time of day", Time::time_of_day},
      {"elapsed s", Time::elapsed_s},     {"elapsed min", Time::elapsed_min},
      {"elapsed h", Time::elapsed_h},     {"elapsed h:mm:ss", Time::elapsed_hms},
      {"serial days", Time::serial_days}, {"unix s", Time::unix_s},
      {"unix ms", Time::unix_ms}};
  for (const auto& [word, time] : times) CHECK(given("time = \"" + std::string{word} + "\"").time == time);
  CHECK(given("decimal = \".\"").decimal == '.');
  CHECK(given("decimal = \",\"").decimal == ',');
  CHECK(given("header_line = 0").header_line == 0);
  CHECK(given("header_line = 7").header_line == 7);
  CHECK(given("time_column = \"Time (s)\"").time_column == "Time (s)");
  CHECK(given("time_column = 2").time_column == "2");
  CHECK(given("unit = \"C\"").unit == ChannelUnit::celsius);
  CHECK(given("unit = \"F\"").unit == ChannelUnit::fahrenheit);
  CHECK(given("unit = \"K\"").unit == ChannelUnit::kelvin);
  CHECK(given("\nunit = \"K\"").unit_line == 4);
  CHECK(given("unlisted = \"evaluated\"").unlisted_off == false);
  CHECK(job("[import]\nunlisted = \"off\"\n[[thermocouple]]\ncolumn = \"TC1\"\n").reading.unlisted_off ==
        true);
}

TEST_CASE("ways to read a log that are refused") {
  for (const Refused& row : {
           Refused{kHead + "[import]\nencoding = \"latin-1\"\n", 3, "`encoding` is \"latin-1\"",
                   "windows-1252"},
           Refused{kHead + "[import]\ndelimiter = \"\\t\"\n", 3, "`delimiter` is", "tab"},
           Refused{kHead + "[import]\ndecimal = \"comma\"\n", 3, "`decimal` is \"comma\"", ""},
           Refused{kHead + "[import]\nheader_line = -1\n", 3, "`header_line` is -1", "or 0"},
           Refused{kHead + "[import]\nheader_line = \"3\"\n", 3, "`header_line` is \"3\"",
                   "number of the line"},
           Refused{kHead + "[import]\ntime_column = 0\n", 3, "`time_column` is 0", "from 1"},
           Refused{kHead + "[import]\nunit = \"mV\"\n", 3, "`unit` is \"mV\"", "C, F, K"},
           Refused{kHead + "[import]\nunit = \"°F\"\n", 3, "`unit` is \"°F\"", "write `unit = \"F\"`"},
           Refused{kHead + "[import]\nunit = \"degC\"\n", 3, "`unit` is \"degC\"", "write `unit = \"C\"`"},
           Refused{kHead + "[import]\nunlisted = \"of\"\n[[thermocouple]]\ncolumn = 2\n", 3,
                   "`unlisted` is \"of\"", "did you mean `off`?"},
           Refused{kHead + "[import]\nunlisted = true\n", 3, "`unlisted` is true", "off, evaluated"},
           Refused{kHead + "[import]\n\nunlisted = \"off\"\n", 4, "`unlisted = \"off\"` leaves nothing",
                   "add a [[thermocouple]]"},
           Refused{kHead + "[import]\ntime = \"minutes\"\n", 3, "`time` is \"minutes\"", "elapsed min"},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}
