// SPDX-License-Identifier: GPL-3.0-or-later
// The folders in which published rules are looked for.
#pragma once

#include <string>
#include <vector>

namespace soakwright::cli {

/// The installed folder (beside the program, else where it was installed to), then the user's data folder,
/// then the one `named` with --rules. The first two only where they are there; `named` also where it is not,
/// so that reading it says so.
std::vector<std::string> rule_folders(const std::string& named);

}  // namespace soakwright::cli
