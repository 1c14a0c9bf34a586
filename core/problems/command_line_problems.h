// SPDX-License-Identifier: GPL-3.0-or-later
// What helps against a problem, where it names commands and options of the command line. A program without
// them knows each by its code, and says what to do in its own place.
#pragma once

#include <optional>

#include "core/problems/problem.h"

namespace soakwright {

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

/// As the command line says it.
const char* command_line_words(CommandLineHelp help);
/// Which of them the problem has; none where its help is for every program.
std::optional<CommandLineHelp> command_line_help_of(const Problem& problem);

}  // namespace soakwright
