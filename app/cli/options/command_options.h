// SPDX-License-Identifier: GPL-3.0-or-later
// Every command and option of the command line, and what their texts go into.
#pragma once

#include <string>

#include "app/cli/arguments.h"

namespace CLI {
class App;
}

namespace soakwright::cli {

/// Options whose texts still have to be evaluated (settled_options.h).
struct RawOptions {
  std::string dates;
  std::string unit;
  RawDraft draft;
  std::string part;
  ImportTexts import;
  std::string paper;
};

/// "soakwright 0.1.0"
const std::string& version();
/// The program's own words at the head of --help, and the exit codes at its foot.
extern const char* const kAbout;
extern const char* const kExitCodes;

/// Adds all commands and options to `app`; parsing writes into `arguments` and `raw`, which must outlive it.
void describe_commands(CLI::App& app, Arguments& arguments, RawOptions& raw);

}  // namespace soakwright::cli
