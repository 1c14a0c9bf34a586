// SPDX-License-Identifier: GPL-3.0-or-later
// What every page says of the file itself, beside what was measured.
#pragma once

#include "app/cli/printing/page_text.h"
#include "core/report/report.h"

namespace soakwright::cli {

/// The columns that are not evaluated, each with the reason.
void not_evaluated(PageText& page, const Report& report);

/// Thermocouples that look wrong, each with the evidence.
void suspects(PageText& page, const Report& report);

/// File warnings, each with its line, count and channel.
/// Preheat and bands, where the job says something about them.
void preheat_and_bands(PageText& page, const Report& report);
void file_warnings(PageText& page, const Report& report);

}  // namespace soakwright::cli
