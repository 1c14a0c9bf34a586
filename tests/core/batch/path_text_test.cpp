// SPDX-License-Identifier: GPL-3.0-or-later
// Paths in results: valid UTF-8 as it is, all else told apart byte by byte. Common practice, no source.
#include "core/batch/path_text.h"

#include <utility>

#include <catch2/catch.hpp>

using soakwright::path_text;

TEST_CASE("two paths that differ never look the same") {
  const std::pair<const char*, const char*> rows[] = {
      {"a/d3 n2.csv", "a/d3 n2.csv"},
      {"Stra\xC3\x9F"
       "e.csv",
       "Stra\xC3\x9F"
       "e.csv"},
      {"d\xE9.csv", "d\\xE9.csv"},
      {"d\xE8.csv", "d\\xE8.csv"},
      {"d\\xE8.csv", "d\\x5CxE8.csv"},
      {"a\nb.csv", "a\\x0Ab.csv"},
      {"a b.csv", "a b.csv"},
      {"a\tb.csv",
       "a\\x09"
       "b.csv"},
      {"\x1b[2J.csv", "\\x1B[2J.csv"},
      {"\xE2\x80\xAEvsc.csv", "\\xE2\\x80\\xAEvsc.csv"},
      {"", ""},
  };
  for (const auto& [path, text] : rows) CHECK(path_text(path) == text);
}
