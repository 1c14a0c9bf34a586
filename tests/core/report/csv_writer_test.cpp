// SPDX-License-Identifier: GPL-3.0-or-later
// Comma-separated values: quoting by RFC 4180, section 2; formulas by common practice, no source.
#include "core/report/csv_writer.h"

#include <limits>

#include <catch2/catch.hpp>

using soakwright::CsvWriter;

TEST_CASE("cells are quoted where they must be, and no cell is a formula") {
  const std::pair<const char*, const char*> rows[] = {
      {"plain", "plain\n"},    {"a,b", "\"a,b\"\n"}, {"say \"x\"", "\"say \"\"x\"\"\"\n"},
      {"a\nb", "a b\n"},       {"=1+1", "'=1+1\n"},  {"@x,y", "\"'@x,y\"\n"},
      {"-12 dB", "'-12 dB\n"}, {"", "\n"},           {"\x1b[2J", "\xEF\xBF\xBD[2J\n"},
  };
  for (const auto& [text, line] : rows) {
    CsvWriter csv;
    csv.text(text);
    csv.end_line();
    CHECK(csv.str() == line);
  }
}

TEST_CASE("numbers are the shortest text that reads back, and nothing where there is none") {
  CsvWriter csv;
  csv.number(0.1);
  csv.number(-12.5);
  csv.number(std::nullopt);
  csv.number(std::numeric_limits<double>::quiet_NaN());
  csv.integer(7);
  csv.nothing();
  csv.end_line();
  csv.text("next");
  csv.end_line();
  CHECK(csv.str() == "0.1,-12.5,,,7,\nnext\n");
}
