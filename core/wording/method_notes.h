// SPDX-License-Identifier: GPL-3.0-or-later
// How each figure was measured; only what applies to this record and this procedure is said.
#pragma once

#include <vector>

#include "core/wording/labelled_text.h"
#include "core/wording/wording_context.h"

namespace soakwright {

std::vector<LabelledText> method_notes(const WordingContext& context);

}  // namespace soakwright
