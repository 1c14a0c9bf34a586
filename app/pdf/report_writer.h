// SPDX-License-Identifier: GPL-3.0-or-later
// Entry points: a report as PDF, its chart as a picture.
//
// A file is written whole or not at all; a symbolic link is followed, a device or pipe is written to
// directly. A QGuiApplication must be there (pdf_module.cpp brings one for programs without); any thread,
// one at a time.
#pragma once

#include <optional>
#include <string>

#include "core/problems/problem.h"
#include "core/report/report.h"
#include "core/report/report_contents.h"
#include "core/system/watch.h"

namespace soakwright {

namespace pdf {
struct IssueFacts;
}

/// The report's file: A4 or Letter pages, fonts embedded, text that can be searched, charts as lines, and the
/// source files inside; built as PDF/A-3b asks. The creation date is contents.created_s, else what
/// SOURCE_DATE_EPOCH says, else now; with a set date, same contents, same bytes.
/// `watch` follows the pages.
Result<std::string> report_document(const ReportContents& contents, const Watch& watch = {});

/// The same, written. Returns nullopt if it is.
std::optional<Problem> write_report(const ReportContents& contents, const std::string& path);

/// The chart with its legend, `width` x `height` pixels: PNG, or SVG where the path ends in .svg.
std::optional<Problem> write_chart_picture(const Report& report, const std::string& path, int width = 1920,
                                           int height = 1200);

/// What the pages have beside the report, as write_report() takes it: the date of issue and the company's
/// picture.
std::optional<Problem> issue_facts(const Report& report, pdf::IssueFacts& issue);

}  // namespace soakwright
