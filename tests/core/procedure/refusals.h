// One row of a reject table: a text, and the line and words of the one problem that it must give.
#pragma once

#include <string>

#include <catch2/catch.hpp>

#include "core/problems/problem.h"

namespace soakwright {

struct Refused {
  std::string text;
  std::size_t line;
  std::string what;  ///< a piece of what was found
  std::string help;  ///< a piece of what would help
};

/// Every problem of a result on lines of its own, for INFO.
inline std::string all_texts(const Problems& problems) {
  std::string out;
  for (const Problem& problem : problems) out += problem.text() + "\n";
  return out;
}

template <typename T>
void check_refused(const Result<T>& result, const Refused& row) {
  INFO(row.text);
  REQUIRE_FALSE(result.ok());
  INFO(all_texts(result.problems()));
  REQUIRE(result.problems().size() == 1);
  const Problem& problem = result.problems().front();
  CHECK(problem.kind == ProblemKind::bad_input);
  CHECK(problem.file == "given.toml");
  CHECK(problem.line == row.line);
  CHECK_THAT(problem.what, Catch::Contains(row.what));
  CHECK_THAT(problem.help, Catch::Contains(row.help));
}

template <typename T>
T accepted(const Result<T>& result, const std::string& text) {
  INFO(text);
  INFO((result.ok() ? std::string{} : all_texts(result.problems())));
  REQUIRE(result.ok());
  return result.value();
}

}  // namespace soakwright
