// SPDX-License-Identifier: GPL-3.0-or-later
// `sign` and `verify`: opens the signing module and lends it the report writer.
#pragma once

#include "core/report/signing_border.h"

namespace soakwright::cli {

/// Signs and says so; the exit code.
int run_sign(const SignOrder& order);
/// Prints a line for each check. 0 where every line holds, 1 where one does not, 2 where nothing is wrong but
/// something could not be shown: there is no signature, or nothing to compare with.
int run_verify(const VerifyOrder& order);

}  // namespace soakwright::cli
