// SPDX-License-Identifier: GPL-3.0-or-later
// Copied: a channel that equals another one, the set point, or all channels' own earlier rows, digit for
// digit and with all their scatter.
#pragma once

#include <vector>

#include "core/phases/phase.h"
#include "core/phases/suspects/readings/row_readings.h"

namespace soakwright {

/// Of two equal channels the later in the log's order is the copy. Where nothing scatters, two channels may
/// well be equal: nobody is accused.
std::vector<Suspect> find_copied_channels(const RowTable& table, const SampledRecord& sampled);

/// Channels that follow a set point column, or a channel whose role is set point, in every row of a ramp.
std::vector<Suspect> find_copied_set_point(const RowTable& table);

/// Rows that repeat earlier rows in all channels; the later ones are the copy.
std::vector<Suspect> find_replayed_rows(const RowTable& table);

}  // namespace soakwright
