// SPDX-License-Identifier: GPL-3.0-or-later
// What `check` prints: the table of requirements with their verdicts, and what a reader should see beside it.
#pragma once

#include <string>

#include "app/cli/printing/page_text.h"
#include "core/report/report.h"

namespace soakwright::cli {

std::string verdict_page(const Report& report, const PageStyle& style, bool explained = false);

}  // namespace soakwright::cli
