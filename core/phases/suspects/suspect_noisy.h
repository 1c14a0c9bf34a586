// SPDX-License-Identifier: GPL-3.0-or-later
// Noisy: a channel whose readings scatter far more than the others' do at the same time.
#pragma once

#include <vector>

#include "core/phases/phase.h"
#include "core/phases/suspects/readings/examined_channel.h"

namespace soakwright {

/// Scatter of a channel over time: one figure for each block of cells; nothing known where negative.
using Scatter = std::vector<double>;
Scatter scatter_of(const ExaminedChannel& examined);
/// The middle of the evaluated channels' scatter, block by block.
Scatter usual_scatter(const std::vector<Scatter>& evaluated);

std::vector<Suspect> find_noisy(const ExaminedChannel& examined, const Scatter& own, const Scatter& usual);

}  // namespace soakwright
