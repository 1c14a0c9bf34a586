// SPDX-License-Identifier: GPL-3.0-or-later
// Shows what saving changes in a file, and asks.
#pragma once

#include <QString>
#include <QStringList>

class QWidget;

namespace soakwright::gui {

/// What the file holds now; empty where there is none.
QString text_on_disk(const QString& path);
/// True if it is to be saved. `lines` as line_changes() gives them; `words` say the same for people.
bool ask_to_save(QWidget* parent, const QString& path, bool is_new, const QStringList& words,
                 const QStringList& lines);

}  // namespace soakwright::gui
