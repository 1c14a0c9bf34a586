// SPDX-License-Identifier: GPL-3.0-or-later
// What a finding means, as rich text for the evidence card.
#pragma once

#include <QString>

#include "core/report/report.h"

namespace soakwright::gui {

/// What is required and why, usual causes, what to look at first, each marked with where it comes from.
QString explanationText(const Explanation& explanation);

}  // namespace soakwright::gui
