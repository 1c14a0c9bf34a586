// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/printing/standard_output.h"

#include <cerrno>
#include <cstdio>
#include <cstring>

namespace soakwright::cli {

std::optional<Problem> write_standard_output(std::string_view text) {
  if (std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0)
    return std::nullopt;
  return Problem{ProblemKind::cannot_write, "standard output", 0,
                 std::string{"cannot be written: "} + std::strerror(errno),
                 "look at what standard output is connected to"};
}

int say(const Problem& problem) {
  std::fprintf(stderr, "soakwright: %s\n", problem.text().c_str());
  return static_cast<int>(problem.kind);
}

int say(const Problems& problems) {
  for (const Problem& problem : problems) static_cast<void>(say(problem));
  return static_cast<int>(problems.front().kind);
}

}  // namespace soakwright::cli
