#include "core/read/cell.h"

#include <string>

#include <catch2/catch.hpp>

using namespace soakwright;

namespace {

struct Accepted {
  const char* text;
  char decimal;
  std::int64_t mantissa;
  int places;
};

struct Rejected {
  const char* text;
  char decimal;
  Cell::Kind kind;
  const char* why;
};

}  // namespace

TEST_CASE("cells that are numbers are kept as the decimal that stands there") {
  const Accepted table[] = {
      {"0", '.', 0, 0},
      {"20.5", '.', 205, 1},
      {"1234.5", '.', 12345, 1},
      {"20.50", '.', 2050, 2},
      {"20,5", ',', 205, 1},
      {"-7.1", '.', -71, 1},
      {"+7.1", '.', 71, 1},
      {"\xE2\x88\x92"
       "7.1",
       '.', -71, 1},
      {" 20.5 ", '.', 205, 1},
      {"\xC2\xA0"
       "20.5\xC2\xA0",
       '.', 205, 1},
      {"20.5\xA0", '.', 205, 1},
      {".5", '.', 5, 1},
      {"5.", '.', 5, 0},
      {"-0.0", '.', 0, 1},
      {"007", '.', 7, 0},
      {"2.05E+01", '.', 205, 1},
      {"2.05e2", '.', 205, 0},
      {"2.05e3", '.', 2050, 0},
      {"205e-1", '.', 205, 1},
      {"0e5", '.', 0, 0},
      {"20.123456789", '.', 20123456789, 9},
      {"999999999999999999", '.', 999999999999999999, 0},
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
  const Rejected table[] = {
      {"", '.', Cell::Kind::empty, "nothing"},
      {"   ", '.', Cell::Kind::empty, "blanks"},
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
  for (const Rejected& entry : table) {
    INFO(entry.text << ": " << entry.why);
    CHECK(parse_cell(entry.text, entry.decimal).kind == entry.kind);
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
