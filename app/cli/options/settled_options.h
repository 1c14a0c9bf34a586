// SPDX-License-Identifier: GPL-3.0-or-later
// Options that go together: what is wrong between them is said, the rest becomes values of the arguments.
#pragma once

#include <optional>
#include <string>

#include "app/cli/arguments.h"
#include "app/cli/options/command_options.h"

namespace soakwright::cli {

/// Each settles a group of options and returns what is wrong with it, if anything is.
/// Choices of words (dates, unit, paper) and the endings of files.
std::optional<std::string> settle_choices(const RawOptions& raw, Arguments& arguments);
/// What `check` and `inspect` have in common: which logs, and what goes to standard output.
std::optional<std::string> settle_logs(const RawOptions& raw, Arguments& arguments);
/// What only `batch` has; after settle_choices().
std::optional<std::string> settle_batch(const RawOptions& raw, Arguments& arguments);

}  // namespace soakwright::cli
