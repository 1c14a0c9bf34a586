// SPDX-License-Identifier: GPL-3.0-or-later
// The window's own short texts: keys, cautions, about.
#pragma once

#include <QString>

#include "core/report/report.h"

class QWidget;

namespace soakwright::gui {

QString keys_text();
/// The report's cautions, else those that hold for every verdict.
QString cautions_text(const Report* report);
QString about_text();
void show_text(QWidget* parent, const QString& title, const QString& html);

}  // namespace soakwright::gui
