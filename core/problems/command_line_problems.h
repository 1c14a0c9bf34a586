// SPDX-License-Identifier: GPL-3.0-or-later
// What helps against a problem, where it names commands and options of the command line.
#pragma once

#include "core/problems/problem.h"

namespace soakwright {

/// As the command line says it.
const char* command_line_words(CommandLineHelp help);
/// The problem with this for its help.
Problem helped_by(Problem problem, CommandLineHelp help);

}  // namespace soakwright
