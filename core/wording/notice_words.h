// SPDX-License-Identifier: GPL-3.0-or-later
// File warnings as text: the one form that JSON, terminal, window and report show.
#pragma once

#include <string>

#include "core/record/record.h"

namespace soakwright {

/// One or more sentences. They hold no temperature, so that no unit is needed.
std::string notice_text(const Notice& notice, const Record& record);

}  // namespace soakwright
