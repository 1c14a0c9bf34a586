// SPDX-License-Identifier: GPL-3.0-or-later
// What can be told of a channel even where the channels do not run together: it never moves while every other
// one does, or it goes far below ambient while the others are hot.
#pragma once

#include <vector>

#include "core/phases/phase.h"
#include "core/phases/suspects/readings/examined_channel.h"

namespace soakwright {

/// Code stuck: over the whole record it stays within a few kelvins while each of three others or more moves
/// by a hundred and more.
std::vector<Suspect> find_never_moving(const ExaminedChannel& examined);

/// Code reversed: it falls far below ambient as the others heat up.
std::vector<Suspect> find_below_ambient(const ExaminedChannel& examined);

}  // namespace soakwright
