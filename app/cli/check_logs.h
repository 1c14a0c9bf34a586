// SPDX-License-Identifier: GPL-3.0-or-later
// `soakwright check` with several logs: a block for each, then a summary; the worst decides.
#pragma once

#include "app/cli/arguments.h"

namespace soakwright::cli {

int check_several(const Arguments& arguments);

}  // namespace soakwright::cli
