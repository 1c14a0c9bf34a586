// SPDX-License-Identifier: GPL-3.0-or-later
// One row of a reject table: a text, and the line and words of the one problem that it must give.
#pragma once

#include <stdexcept>
#include <string>

#include "core/problems/problem.h"

namespace soakwright {

struct Refused {
  std::string text;
  std::size_t line;
  std::string what;  ///< a piece of what was found
  std::string help;  ///< a piece of what would help
};

/// Every problem on a line of its own.
inline std::string all_texts(const Problems& problems) {
  std::string out;
  for (const Problem& problem : problems) out += problem.text() + "\n";
  return out;
}

/// Empty where `result` is the one problem of `row` in the file given.toml; else what came instead.
template <typename T>
std::string unlike(const Result<T>& result, const Refused& row) {
  if (result.ok()) return "accepted:\n" + row.text;
  const Problem& first = result.problems().front();
  const bool alike = result.problems().size() == 1 && first.kind == ProblemKind::bad_input &&
                     first.file == "given.toml" && first.line == row.line &&
                     first.what.find(row.what) != std::string::npos &&
                     first.help.find(row.help) != std::string::npos;
  return alike ? "" : all_texts(result.problems()) + "of:\n" + row.text;
}

/// The value; a test that meets problems instead ends with them.
template <typename T>
T accepted(const Result<T>& result) {
  if (!result.ok()) throw std::runtime_error(all_texts(result.problems()));
  return result.value();
}

}  // namespace soakwright
