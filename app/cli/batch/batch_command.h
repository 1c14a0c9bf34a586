// SPDX-License-Identifier: GPL-3.0-or-later
// `soakwright batch`: folders of logs -> results, reports, a summary -> exit code.
#pragma once

#include "core/batch.h"

namespace soakwright::cli {

int run_batch_command(const BatchRequest& request);

}  // namespace soakwright::cli
