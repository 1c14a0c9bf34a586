// SPDX-License-Identifier: GPL-3.0-or-later
// Words of the window that no QObject says, and text of the core in rich text.
#pragma once

#include <QString>
#include <string>

namespace soakwright::gui {

/// As QObject::tr() translates, for free functions.
QString tr(const char* text);
/// A path as the system names files.
std::string path_bytes(const QString& path);
/// shown_text() in which nothing is taken for markup.
QString html_text(const std::string& text);
/// A text of the record in a menu: no letter of it becomes a key.
QString menu_text(QString text);

}  // namespace soakwright::gui
