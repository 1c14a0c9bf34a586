// SPDX-License-Identifier: GPL-3.0-or-later
// The window's report writer, as the signing module is lent it.
#pragma once

#include <mutex>

#include "core/report/signing_border.h"

namespace soakwright::gui {

/// Reports are printed one at a time, on whichever thread: hold this while one is.
std::unique_lock<std::mutex> printing_turn();

/// Prints on the thread that calls it, each in its turn. `watch` follows the report's pages.
ReportPrinter report_printer(const Watch& watch = {});

}  // namespace soakwright::gui
