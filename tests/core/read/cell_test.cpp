// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/cell.h"

#include <string>

#include <catch2/catch.hpp>

#include "core/read/log_file.h"
#include "tests/core/read/written_log.h"

using namespace soakwright;

namespace {

struct Accepted {
  const char* text;
  std::int64_t mantissa;
  int places;
  char decimal;
};

struct Rejected {
  const char* text;
  char decimal;
  Cell::Kind kind;
  const char* why;
};

const Rejected kRejected[] = {
    {"", '.', Cell::Kind::empty, "nothing"},
    {"   ", '.', Cell::Kind::empty, "spaces"},
    {"NaN", '.', Cell::Kind::text, "not a number"},
    {"inf", '.', Cell::Kind::text, "not finite"},
    {"1e999", '.', Cell::Kind::text, "not finite"},
    {"---", '.', Cell::Kind::text, "dashes"},
    {"OPEN", '.', Cell::Kind::text, "a word"},
    {"20.5 C", '.', Cell::Kind::text, "a unit behind the number"},
    {"20.5*", '.', Cell::Kind::text, "a mark behind the number"},
    {"20,5", '.', Cell::Kind::text, "the other decimal sign"},
    {"20.5", ',', Cell::Kind::text, "the other decimal sign"},
    {"1.2.3", '.', Cell::Kind::text, "two points"},
    {"--5", '.', Cell::Kind::text, "two signs"},
    {"- 5", '.', Cell::Kind::text, "a blank behind the sign"},
    {".", '.', Cell::Kind::text, "a point alone"},
    {"-", '.', Cell::Kind::text, "a sign alone"},
    {"0x1F", '.', Cell::Kind::text, "hexadecimal"},
    {"5e", '.', Cell::Kind::text, "an exponent without digits"},
    {"1,234", '.', Cell::Kind::grouped, "grouping by comma"},
    {"1,234.5", '.', Cell::Kind::grouped, "grouping by comma"},
    {"1.234,5", ',', Cell::Kind::grouped, "grouping by point"},
    {"1 234.5", '.', Cell::Kind::grouped, "grouping by blank"},
    {"1'234'567", '.', Cell::Kind::grouped, "grouping by apostrophe"},
    {"1\xC2\xA0"
     "234,5",
     ',', Cell::Kind::grouped, "grouping by no-break space"},
    {"12,34", '.', Cell::Kind::text, "no group has two digits"},
    {"1,234 567", '.', Cell::Kind::text, "two kinds of marks"},
    {"1234,567", '.', Cell::Kind::text, "four digits before the first group"},
};

/// A log whose fourth line has `cell` in its second column.
std::string log_with(const std::string& cell, char decimal) {
  const std::string good = std::string{"20"} + decimal + "5";
  return "Time;TC1\n0;" + good + "\n10;" + good + "\n20;\"" + cell + "\"\n30;" + good + "\n";
}

}  // namespace

TEST_CASE("cells that are numbers are kept as the decimal that stands there") {
  const Accepted table[] = {
      {"0", 0, 0, '.'},
      {"20.5", 205, 1, '.'},
      {"1234.5", 12345, 1, '.'},
      {"20.50", 2050, 2, '.'},
      {"20,5", 205, 1, ','},
      {"-7.1", -71, 1, '.'},
      {"+7.1", 71, 1, '.'},
      {"\xE2\x88\x92"
       "7.1",
       -71, 1, '.'},
      {" 20.5 ", 205, 1, '.'},
      {"\xC2\xA0"
       "20.5\xC2\xA0",
       205, 1, '.'},
      {"20.5\xA0", 205, 1, '.'},
      {".5", 5, 1, '.'},
      {"5.", 5, 0, '.'},
      {"-0.0", 0, 1, '.'},
      {"007", 7, 0, '.'},
      {"2.05E+01", 205, 1, '.'},
      {"2.05e2", 205, 0, '.'},
      {"2.05e3", 2050, 0, '.'},
      {"205e-1", 205, 1, '.'},
      {"0e5", 0, 0, '.'},
      {"20.123456789", 20123456789, 9, '.'},
      {"999999999999999999", 999999999999999999, 0, '.'},
  };
  for (const Accepted& entry : table) {
    INFO(entry.text);
    const Cell cell = parse_cell(entry.text, entry.decimal);
    CHECK(cell.kind == Cell::Kind::number);
    CHECK(cell.exact);
    CHECK(cell.mantissa == entry.mantissa);
    CHECK(cell.places == entry.places);
  }
}

TEST_CASE("cells that are no numbers say what they are") {
  for (const Rejected& entry : kRejected) {
    INFO(entry.text << ": " << entry.why);
    CHECK(parse_cell(entry.text, entry.decimal).kind == entry.kind);
  }
}

TEST_CASE("a refused cell is missing and named with its line and its text") {
  for (const Rejected& entry : kRejected) {
    INFO(entry.text << ": " << entry.why);
    const WrittenLog log{log_with(entry.text, entry.decimal)};
    const auto read = read_log(log.path(), {});
    REQUIRE(read.ok());
    const LogColumn& column = read.value().columns.at(0);
    CHECK(read.value().rows() == 4);
    CHECK(column.numbers == 3);
    const LineIssue& texts = entry.kind == Cell::Kind::grouped ? column.grouped : column.texts;
    CHECK(column.texts.count + column.grouped.count == (entry.kind == Cell::Kind::empty ? 0 : 1));
    CHECK(texts.count == (entry.kind == Cell::Kind::empty ? 0 : 1));
    if (texts.count == 0) continue;
    CHECK(texts.line == 4);
    CHECK(texts.text == entry.text);
  }
}

TEST_CASE("a number with more digits than fit becomes the nearest double") {
  // Nearest doubles by the rules of IEEE 754; the literal is the compiler's own conversion.
  const Cell cell = parse_cell("123.4567890123456789012345", '.');
  CHECK(cell.kind == Cell::Kind::number);
  CHECK_FALSE(cell.exact);
  CHECK(cell.value == 123.4567890123456789012345);
  CHECK(parse_cell("9007199254740993", '.').value == 9007199254740993.0);
  CHECK(parse_cell("1e300", '.').value == 1e300);
  CHECK(parse_cell("1,5e-30", ',').value == 1.5e-30);
}
