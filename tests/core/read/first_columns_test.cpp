// SPDX-License-Identifier: GPL-3.0-or-later
// What can be offered as the time column of a log that was refused: counted by hand in each text.
#include "core/read/first_columns.h"

#include <catch2/catch.hpp>

using namespace soakwright;

TEST_CASE(
    "the columns of a refused log are those of its widest first line, by name where a line names them") {
  using Names = std::vector<std::string>;
  struct Offered {
    const char* why;
    std::vector<std::string> lines;
    std::optional<char> delimiter;
    std::optional<std::size_t> header_line;
    Names columns;
  };
  const Offered table[] = {
      {"names and rows, no time among them",
       {"A (kW),TC1 (°C),TC2 (°C)", "1.5,20.5,21.5", "1.5,22.5,23.5"},
       {},
       {},
       {"A", "TC1", "TC2"}},
      {"more than eight columns",
       {"a,b,c,d,e,f,g,h,i,j", "1,2,3,4,5,6,7,8,9,10", "1,2,3,4,5,6,7,8,9,10"},
       {},
       {},
       {"a", "b", "c", "d", "e", "f", "g", "h", "i", "j"}},
      {"no names", {"1;2;3", "1;2;3"}, {}, {}, {"", "", ""}},
      {"a row wider than the names", {"a;b", "1;2", "1;2", "1;2;3;4"}, {}, {}, {"a", "b", "", ""}},
      {"a heading wider than the table does not count",
       {"drum;D-3;nozzle;N2;seam;5", "a;b", "1;2", "1;2"},
       {},
       {},
       {"a", "b"}},
      {"no rows at all", {"one|two|three", "red|green"}, {}, {}, {"", "", ""}},
      {"a delimiter at the lines' end makes no column", {"one|two|", "red|green|"}, {}, {}, {"", ""}},
      {"a given line of names", {"red|green|blue", "one|two|three"}, {}, 2, {"one", "two", "three"}},
      {"a given line of names that the file does not have", {"red|green", "one|two"}, {}, 9, {"", ""}},
      {"no line of names, as given", {"1;2", "1;2", "1;2"}, {}, 0, {"", ""}},
      {"a given delimiter", {"one,1;two", "red,2;green,3"}, ';', {}, {"", ""}},
      {"spaces, as given", {"one two  three", "red"}, ' ', {}, {"", "", ""}},
      {"spaces, where nothing else parts the lines", {"1 2 3", "red green"}, {}, {}, {"", "", ""}},
      {"names in quotes", {"\"TC 1, inside (°C)\",\"kW\"", "1,2", "3,4"}, {}, {}, {"TC 1, inside", "kW"}},
      {"nothing", {}, {}, {}, {}},
      {"an empty line", {""}, {}, {}, {}},
  };
  for (const Offered& entry : table) {
    INFO(entry.why);
    CHECK(first_columns(entry.lines, entry.delimiter, entry.header_line) == entry.columns);
  }
}
