// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a scatter has the shape of noise: both ways, turning at every other reading, with few that are far
// off. A curve that bends (heat of a weld run that passes a thermocouple, a corner) scatters as much and has
// another shape.
#pragma once

#include <cstddef>

#include "core/phases/suspects/readings/examined_channel.h"

namespace soakwright {

/// Whether the cells [first, last), block by block of `block` cells, scatter by `deviation_k` as noise does.
bool is_noise(const ExaminedChannel& examined, std::size_t first, std::size_t last, std::size_t block,
              double deviation_k);

}  // namespace soakwright
