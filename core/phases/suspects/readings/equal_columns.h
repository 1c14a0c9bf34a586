// SPDX-License-Identifier: GPL-3.0-or-later
// Which pairs of channels are worth comparing reading by reading: in a log of thousands of columns, all pairs
// would take minutes.
#pragma once

#include <cstddef>
#include <functional>
#include <vector>

#include "core/phases/suspects/readings/row_readings.h"

namespace soakwright {

/// For each place in `table` the later places to compare with it, in rising order. Few channels: all of them.
/// More: those that equal it, to the digit, in a block of neighbouring rows within which the readings change;
/// two channels that are equal in a run of rows with at least 60 turns or 40 bends share such a block. Only
/// places for which `scatters` is true are listed; it is called once for each. Where more than fifty share a
/// block, each is compared with the first fifty of them.
std::vector<std::vector<std::size_t>> pairs_to_compare(const RowTable& table,
                                                       const std::function<bool(std::size_t)>& scatters,
                                                       std::size_t compare_all_up_to = 200);

/// For each place the first place whose readings equal its own, to the digit and in every row; itself where
/// there is none before it.
std::vector<std::size_t> first_equal_places(const RowTable& table);

}  // namespace soakwright
