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

namespace soakwright {

namespace pdf {
struct IssueFacts;
}

/// A4 or Letter pages, PDF/A-1b, fonts embedded, text that can be searched, charts as lines. Nothing where it
/// went well. The creation date is now, or what SOURCE_DATE_EPOCH says; with that set, same report, same
/// bytes.
std::optional<Problem> write_report(const Report& report, const std::string& path);

/// The chart with its legend, `width` x `height` pixels: PNG, or SVG where the path ends in .svg.
std::optional<Problem> write_chart_picture(const Report& report, const std::string& path, int width = 1920,
                                           int height = 1200);

/// What the pages have beside the report, as write_report() takes it: the date of issue and the company's
/// picture.
std::optional<Problem> issue_facts(const Report& report, pdf::IssueFacts& issue);

}  // namespace soakwright
