// SPDX-License-Identifier: GPL-3.0-or-later
// What went wrong, as data: kind, place, what was found and what would help.
//
// A step that can fail gives Result<T>: its value, or every problem it met in one run. Exceptions are turned
// into problems at the core's entry points (caught.h) and never cross them.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace soakwright {

/// The kinds are the exit codes of the command line (those of sysexits.h where it has one).
enum class ProblemKind {
  usage = 64,
  bad_input = 65,
  cannot_open = 66,
  no_such_part = 69,
  fault = 70,  ///< of the program itself, or too little memory
  cannot_write = 73,
};

/// What helps, where that is a command or an option of the command line: a program without them says what to
/// do in its own place (command_line_problems.h has the words).
enum class CommandLineHelp {
  give_procedure,
  say_date_order,
  give_report,
  sign_report_as_written,
  write_report_with_review,
  give_certificate,
  give_password,
  check_password,
};
constexpr CommandLineHelp kLastCommandLineHelp = CommandLineHelp::check_password;

struct Problem {
  ProblemKind kind = ProblemKind::bad_input;
  std::string file;      ///< as the user named it; may be empty
  std::size_t line = 0;  ///< from 1; 0 where no line is to blame
  std::string what;      ///< what was found
  std::string help;      ///< what would help
  /// Where `help` names the command line.
  std::optional<CommandLineHelp> command_line_help = std::nullopt;

  /// `FILE:LINE: what; what would help`, the parts that there are, on one line and safe to show: each part is
  /// printable().
  [[nodiscard]] std::string text() const;
};

using Problems = std::vector<Problem>;

template <typename T>
class [[nodiscard]] Result {
 public:
  Result(T value) : state_(std::move(value)) {}                      // NOLINT: implicit on purpose
  Result(Problem problem) : state_(Problems{std::move(problem)}) {}  // NOLINT
  Result(Problems problems) : state_(std::move(problems)) {}         // NOLINT

  [[nodiscard]] bool ok() const { return std::holds_alternative<T>(state_); }
  explicit operator bool() const { return ok(); }
  /// Only where ok().
  [[nodiscard]] const T& value() const& { return *std::get_if<T>(&state_); }
  [[nodiscard]] T& value() & { return *std::get_if<T>(&state_); }
  [[nodiscard]] T&& value() && { return std::move(*std::get_if<T>(&state_)); }
  /// Only where not ok().
  [[nodiscard]] const Problems& problems() const { return *std::get_if<Problems>(&state_); }

 private:
  std::variant<T, Problems> state_;
};

}  // namespace soakwright
