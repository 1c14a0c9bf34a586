// SPDX-License-Identifier: GPL-3.0-or-later
// What `inspect` prints: how the log was read, and what it shows by itself.
#pragma once

#include <string>

#include "app/cli/printing/page_text.h"
#include "core/report/report.h"

namespace soakwright::cli {

std::string reading_page(const Report& report, const PageStyle& style);

}  // namespace soakwright::cli
