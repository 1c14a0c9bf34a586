// SPDX-License-Identifier: GPL-3.0-or-later
// The report on paper: the pages of the PDF, on a printer.
#pragma once

#include <memory>

#include "core/problems/problem.h"
#include "core/report/report.h"

class QPrinter;

namespace soakwright::gui {

/// The report's sheet, without margins, at a resolution that its finest lines need.
void prepare_sheet(const Report& report, QPrinter& printer);

/// Every page, each as it lies in the PDF; the printer's copies and range count. Empty where it went well.
Problems print_report(const std::shared_ptr<const Report>& report, QPrinter& printer);

}  // namespace soakwright::gui
