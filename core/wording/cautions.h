// SPDX-License-Identifier: GPL-3.0-or-later
// What a reader must not conclude from this report.
#pragma once

#include <string>
#include <vector>

#include "core/wording/wording_context.h"

namespace soakwright {

std::vector<std::string> caution_texts(const WordingContext& context);

}  // namespace soakwright
