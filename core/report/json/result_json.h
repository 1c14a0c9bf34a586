// SPDX-License-Identifier: GPL-3.0-or-later
// The result as JSON, `result 1` (keys: resources/manual/result.md): same input, same bytes, on any number of
// threads.
#pragma once

#include <string>

#include "core/evaluate/analysis.h"

namespace soakwright {

/// The whole object with a line end behind it. Always valid UTF-8; numbers are the shortest text that reads
/// back to the same double.
std::string result_json(const Analysis& analysis);

}  // namespace soakwright
