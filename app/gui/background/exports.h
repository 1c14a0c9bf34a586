// SPDX-License-Identifier: GPL-3.0-or-later
// Files that leave the window: the report, the result, the chart's picture. Each whole or not at all. Long:
// not for the GUI thread, but each may be called on any other.
#pragma once

#include <QImage>
#include <QString>

#include "app/gui/open_case.h"

namespace soakwright::gui {

/// With the source files inside: one that has changed since it was read is refused.
Problems export_report(const Analysis& analysis, const ReportOptions& options, const QString& path);
Problems export_result(const Analysis& analysis, const QString& path);
Problems export_picture(const QImage& picture, const QString& path);

/// A job, a review: short.
Problems write_text(const QString& path, const std::string& text);

}  // namespace soakwright::gui
