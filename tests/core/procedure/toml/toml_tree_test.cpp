// SPDX-License-Identifier: GPL-3.0-or-later
// TOML that our files are written in, where the library behind it needs watching.
#include "core/procedure/toml/toml_tree.h"

#include <catch2/catch.hpp>

using namespace soakwright;

TEST_CASE("letters of other alphabets outside of quotes are refused, within quotes they stay") {
  // Found by fuzzing: Cyrillic Ze (U+0417) and its like ran into what toml++ takes for impossible.
  for (const char* letter :
       {"\u0417", "\u0431", "\u03B1", "\u4E2D", "\u1680", "\u2010", "\uFB01", "\U0001F600"}) {
    CAPTURE(letter);
    const std::string text{letter};
    for (const std::string& line : {text + " = 1\n", "a" + text + " = 1\n", "a = " + text + "\n",
                                    "a = 1" + text + "\n", "[" + text + "]\n"}) {
      const auto refused = parse_toml(line, "f.toml");
      REQUIRE_FALSE(refused.ok());
      CHECK(refused.problems().front().line == 1);
    }
    const auto accepted = parse_toml("a = \"" + text + "\" # " + text + "\n", "f.toml");
    REQUIRE(accepted.ok());
    CHECK(std::get<std::string>(accepted.value().entries.front().value.value) == text);
  }
}
