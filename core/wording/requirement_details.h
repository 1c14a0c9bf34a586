// SPDX-License-Identifier: GPL-3.0-or-later
// What is shown beside a requirement for comparison; nothing of it decides.
#pragma once

#include <vector>

#include "core/evaluate/requirement.h"
#include "core/wording/labelled_text.h"
#include "core/wording/printed_numbers.h"

namespace soakwright {

/// Standard error, certain and possible time, other windows, excursions allowed, the readings of a spread.
std::vector<LabelledText> requirement_details(const Requirement& requirement, const PrintedNumbers& say);

}  // namespace soakwright
