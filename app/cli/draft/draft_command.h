// SPDX-License-Identifier: GPL-3.0-or-later
// `soakwright draft`: the list of rules, or a procedure to a file or to standard output.
#pragma once

#include "app/cli/arguments.h"

namespace soakwright::cli {

/// The exit code.
int run_draft(const Arguments& arguments);

}  // namespace soakwright::cli
