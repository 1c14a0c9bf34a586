// SPDX-License-Identifier: GPL-3.0-or-later
// What dialects are taken for what, and which are refused, with reason and line. No standard covers what
// recorders write beyond RFC 4180 (commas, quotes); the rest is common practice, no source.
#include "core/read/dialect_detection.h"

#include <string>

#include <catch2/catch.hpp>

#include "core/read/log_file.h"
#include "tests/core/read/written_log.h"

using namespace soakwright;

namespace {

struct Accepted {
  const char* why;
  const char* text;
  char delimiter;
  char decimal;
  std::size_t header_line;
  const char* names;  ///< of the columns besides the time, parted by '/'
  std::size_t rows;
};

struct Rejected {
  const char* why;
  const char* text;
  std::size_t line;
  const char* found;
  const char* help;
};

std::string names_of(const LogTable& table) {
  std::string names;
  for (const LogColumn& column : table.columns) names += (names.empty() ? "" : "/") + column.name;
  return names;
}

}  // namespace

TEST_CASE("dialects of recorders and spreadsheets are found") {
  const Accepted table[] = {
      {"commas", "Time,A1,A2\n0,20.5,21.5\n10,22.5,23.5\n", ',', '.', 1, "A1/A2", 2},
      {"commas and whole numbers", "Time,A1,A2\n0,20,21\n10,22,23\n", ',', '.', 1, "A1/A2", 2},
      {"commas with spaces behind", "Time, A1, A2\n0, 20.5, 21.5\n10, 22.5, 23.5\n", ',', '.', 1, "A1/A2", 2},
      {"quotes around everything (RFC 4180)", "\"Time\",\"A1\"\n\"0\",\"20.5\"\n\"10\",\"22.5\"\n", ',', '.',
       1, "A1", 2},
      {"a delimiter inside quotes (RFC 4180)", "Time,\"A,1\"\n0,20.5\n10,22.5\n", ',', '.', 1, "A,1", 2},
      {"doubled quotes (RFC 4180)", "Time,\"A \"\"1\"\"\"\n0,20.5\n10,22.5\n", ',', '.', 1, "A \"1\"", 2},
      {"comma decimals in quotes", "Time,A1\n0,\"20,5\"\n10,\"22,5\"\n", ',', ',', 1, "A1", 2},
      {"semicolons and comma decimals", "Time;A1;A2\n0;20,5;21,5\n10;22,5;23,5\n", ';', ',', 1, "A1/A2", 2},
      {"semicolons and points", "Time;A1;A2\n0;20.5;21.5\n10;22.5;23.5\n", ';', '.', 1, "A1/A2", 2},
      {"semicolons, commas in the names", "Time;A1, left;A2, right\n0;20.5;21.5\n10;22.5;23.5\n", ';', '.', 1,
       "A1, left/A2, right", 2},
      {"tabs", "Time\tA1\tA2\n0\t20.5\t21.5\n10\t22.5\t23.5\n", '\t', '.', 1, "A1/A2", 2},
      {"tabs and comma decimals", "Time\tA1\n0\t20,5\n10\t22,5\n", '\t', ',', 1, "A1", 2},
      {"tabs and empty cells", "Time\tA1\tA2\n0\t20.5\t\n10\t\t23.5\n20\t24.5\t25.5\n", '\t', '.', 1, "A1/A2",
       3},
      {"pipes", "Time|A1|A2\n0|20.5|21.5\n10|22.5|23.5\n", '|', '.', 1, "A1/A2", 2},
      {"runs of spaces", "Time   A1    A2\n   0  20.5  21.5\n  10  22.5 123.5\n", ' ', '.', 1, "A1/A2", 2},
      {"spaces and tabs mixed", "Time \t A1 A2\n0 \t20.5 21.5\n10\t 22.5 23.5\n", ' ', '.', 1, "A1/A2", 2},
      {"spaces, comma decimals", "Time A1 A2\n0 20,5 21,5\n10 22,5 23,5\n", ' ', ',', 1, "A1/A2", 2},
      {"a date with a blank, commas", "Date,A1\n2031-04-02 06:00:00,20.5\n2031-04-02 06:01:00,21.5\n", ',',
       '.', 1, "A1", 2},
      {"a dead input in most columns", "Time,A1,A2,A3,A4\n0,20.5,OPEN,OPEN,OPEN\n10,22.5,OPEN,OPEN,OPEN\n",
       ',', '.', 1, "A1/A2/A3/A4", 2},
      {"no header", "0,20.5\n10,22.5\n20,23.5\n", ',', '.', 0, "2", 3},
      {"heading lines with another delimiter",
       "Furnace: north; bay 2\nStart: 06:00; end: 18:00\nTime,A1\n0,20.5\n10,22.5\n", ',', '.', 3, "A1", 2},
      {"a heading of key,value lines", "Batch,117\nOperator,I. Okafor\nTime,A1,A2\n0,20.5,21\n10,22.5,23\n",
       ',', '.', 3, "A1/A2", 2},
  };
  for (const Accepted& entry : table) {
    INFO(entry.why);
    const WrittenLog log{entry.text};
    const auto read = read_log(log.path(), {});
    REQUIRE(read.ok());
    CHECK(read.value().delimiter.value == entry.delimiter);
    CHECK_FALSE(read.value().delimiter.given());
    CHECK(read.value().decimal.value == entry.decimal);
    CHECK(read.value().header_line.value == entry.header_line);
    CHECK(names_of(read.value()) == entry.names);
    CHECK(read.value().rows() == entry.rows);
  }
}

TEST_CASE("what is no table is refused with the line and the cure") {
  const Rejected table[] = {
      {"nothing but line ends", "\n\n\n", 0, "only empty lines", "export"},
      {"prose", "\n\nDear Mr Lindqvist,\nthe record follows.\n", 3, "no rows of time and temperature",
       "one line for each time"},
      {"one column", "A1\n20.5\n21.5\n22.5\n", 1, "no rows of time and temperature", "parted by commas"},
      {"a header alone", "Time,A1\n", 1, "no rows", "one line for each time"},
      {"comma decimals without quotes, names tell", "Time,A1,A2\n0,20,5,21,5\n10,22,5,23,5\n", 2,
       "decimal commas in a file parted by commas", "semicolons"},
      {"the same with date and time apart", "Date,Time,A1\n2031-04-02,06:00,20,5\n2031-04-02,06:01,22,5\n", 2,
       "decimal commas in a file parted by commas", "in quotes"},
      {"the time alone", "Date,Time\n2031-04-02,06:00\n2031-04-02,06:01\n", 2, "no column besides the time",
       "at least one temperature"},
      {"no time", "A1,A2\n20.5,21.5\n20.1,21.0\n20.9,21.9\n", 2, "no column holds the time",
       "a column of dates with times"},
      {"a second table", "Time,A1\n0,20.5\n10,21.5\nTime,B1\n20,22.5\n", 4, "another table begins here",
       "split"},
  };
  for (const Rejected& entry : table) {
    INFO(entry.why);
    const WrittenLog log{entry.text};
    const auto read = read_log(log.path(), {});
    REQUIRE_FALSE(read.ok());
    const Problem& problem = read.problems().front();
    INFO(problem.text());
    CHECK(problem.kind == ProblemKind::bad_input);
    CHECK(problem.file == log.path());
    CHECK(problem.line == entry.line);
    CHECK(problem.what.find(entry.found) != std::string::npos);
    CHECK(problem.help.find(entry.help) != std::string::npos);
  }
}

TEST_CASE(
    "a dialect that is given is used, and one that the file contradicts is named beside the file's own") {
  const WrittenLog commas{"Time,A1\n0,20.5\n10,22.5\n"};
  GivenSettings given;
  given.delimiter = ',';
  given.decimal = '.';
  const auto used = read_log(commas.path(), given);
  REQUIRE(used.ok());
  CHECK(used.value().delimiter.given());
  CHECK(used.value().decimal.given());

  struct Clash {
    const char* text;
    char delimiter;  ///< 0: not given
    char decimal;
    const char* given;
    const char* found;
    std::size_t line;
  };
  const Clash table[] = {
      {"Time,A1\n0,20.5\n10,22.5\n", ';', 0, "delimiter ';' was given", "','", 2},
      {"Time;A1\n0;20.5\n10;22.5\n", '\t', 0, "delimiter tab was given", "';'", 2},
      {"Time;A1\n0;20.5\n10;22.5\n", 0, ',', "decimal sign ',' was given", "'.'", 2},
      {"Time;A1\n0;20,5\n10;22,5\n", 0, '.', "decimal sign '.' was given", "','", 2},
  };
  for (const Clash& entry : table) {
    INFO(entry.text);
    const WrittenLog log{entry.text};
    GivenSettings against;
    if (entry.delimiter != 0) against.delimiter = entry.delimiter;
    if (entry.decimal != 0) against.decimal = entry.decimal;
    const auto read = read_log(log.path(), against);
    REQUIRE_FALSE(read.ok());
    const Problem& problem = read.problems().front();
    INFO(problem.text());
    CHECK(problem.line == entry.line);
    CHECK(problem.what.find(entry.given) != std::string::npos);
    CHECK(problem.what.find(entry.found) != std::string::npos);
  }
}

TEST_CASE("a log has at most 10,000 columns") {
  const auto log_of = [](std::size_t cells) {
    std::string text = "Time";
    for (std::size_t c = 1; c < cells; ++c) text += ",T" + std::to_string(c);
    for (const char* time : {"\n0", "\n10", "\n20"}) {
      text += time;
      for (std::size_t c = 1; c < cells; ++c) text += ",20";
    }
    return text + "\n";
  };
  const WrittenLog most{log_of(10'000)};
  const auto read = read_log(most.path(), {});
  REQUIRE(read.ok());
  CHECK(read.value().columns.size() == 9'999);
  const WrittenLog more{log_of(10'001)};
  const auto refused = read_log(more.path(), {});
  REQUIRE_FALSE(refused.ok());
  CHECK(refused.problems().front().line == 2);
  CHECK(refused.problems().front().what.find("10001 cells") != std::string::npos);
  CHECK(refused.problems().front().help.find("delimiter") != std::string::npos);
}

TEST_CASE("rows that disagree about their cells have as many as the line of names") {
  // Three of five rows have a cell too many: decimal commas.
  const WrittenLog log{"Time,A1,A2\n0,20,1,21\n10,22,1,23\n20,24.5,25.5\n30,26,1,27\n40,28.5,29.5\n"};
  const auto table = read_log(log.path(), {});
  REQUIRE(table.ok());
  CHECK(table.value().header_line.value == 1);
  CHECK(names_of(table.value()) == "A1/A2");
  CHECK(table.value().long_rows.count == 3);
  CHECK(table.value().columns[0].numbers == 2);
}

TEST_CASE("a first row with a cell too many is named without it where no column holds the time") {
  const WrittenLog log{"Level,Depth\n9,20,1\n5,21\n7,22\n3,20\n"};
  const auto refused = read_log(log.path(), {});
  REQUIRE_FALSE(refused.ok());
  CHECK(refused.problems().front().line == 2);
  CHECK(refused.problems().front().what ==
        "no column holds the time; the first row begins with 'Level' 9, 'Depth' 20");
}
