// SPDX-License-Identifier: GPL-3.0-or-later
// An uncertainty budget as a table of rich text, for the evidence card.
#pragma once

#include <QString>

#include "core/report/report.h"

namespace soakwright::gui {

/// Each contribution with its half-width and u at every temperature; U and the U of a rate below.
QString budgetText(const BudgetTable& table, TemperatureUnit unit);

}  // namespace soakwright::gui
