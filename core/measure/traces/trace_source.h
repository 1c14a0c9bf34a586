// SPDX-License-Identifier: GPL-3.0-or-later
// A channel's valid samples in the evaluated rows.
#pragma once

#include <cstddef>
#include <vector>

#include "core/measure/traces/trace.h"

namespace soakwright {

/// The samples of a channel of the record, but for those in `unmeasured` (merged). `room` holds what a
/// channel with a reading in every row, none of them left out, has; null for others. Points into the record.
TraceSource load_source(const Record& record, std::size_t channel, double* room,
                        const std::vector<Span>& unmeasured);

}  // namespace soakwright
