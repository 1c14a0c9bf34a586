// SPDX-License-Identifier: GPL-3.0-or-later
// Readings that no process makes: a spike of one to three, or jumps to and fro again and again.
#pragma once

#include <vector>

#include "core/phases/phase.h"
#include "core/phases/suspects/readings/row_readings.h"

namespace soakwright {

/// Of the channels of the table, in their order: code spike for each of a few spikes, code noisy where there
/// are many or the readings jump to and fro. Heat of a weld run comes at once too, but fades within minutes.
std::vector<Suspect> find_spikes_and_jumps(const RowTable& table);

}  // namespace soakwright
