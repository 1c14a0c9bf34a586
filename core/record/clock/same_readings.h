// SPDX-License-Identifier: GPL-3.0-or-later
// Whether two records are the same run: the readings themselves, whatever their times, files and formats say.
#pragma once

#include "core/record/record.h"

namespace soakwright {

/// All readings of both are the same, row by row; or the rows that both can share at some shift, at least
/// half of the shorter record, are the same but for one in a hundred, and they scatter too much for that to
/// be chance. Channels count by their readings, not by name or order.
bool same_readings(const Record& a, const Record& b);

}  // namespace soakwright
