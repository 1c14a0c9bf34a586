// SPDX-License-Identifier: GPL-3.0-or-later
// How many evaluated channels are known at once.
#pragma once

#include <cstddef>
#include <optional>

#include "core/measure/holds/group_range.h"

namespace soakwright {

struct FewestKnown {
  std::size_t count = 0;
  Span time;  ///< the first time with so few
  /// The smallest number if a person confirmed the readings that are no measurement so far.
  std::size_t count_if_confirmed = 0;
};

/// The smallest number of channels of the group known at any instant of `time`; one excluded does not count.
FewestKnown fewest_known(const TraceSet& set, Group group, Span time);

/// From the first entry of any channel into low…high to the last exit of any from later_low…later_high.
std::optional<Span> first_entry_to_last_exit(const TraceSet& set, Group group, Span record,
                                             const HoldStage& first, const HoldStage& last);

}  // namespace soakwright
