// SPDX-License-Identifier: GPL-3.0-or-later
// What saving does to a file, line by line.
#pragma once

#include <QString>
#include <QStringList>

namespace soakwright::gui {

/// Lines taken out as "− …", lines put in as "+ …", in the order of the file, with "…" where lines between
/// stay. Empty where both are the same.
QStringList line_changes(const QString& before, const QString& after);

}  // namespace soakwright::gui
