// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/texts/window_text.h"

#include <QCoreApplication>
#include <QFile>

#include "app/pdf/shown_text.h"

namespace soakwright::gui {

QString tr(const char* text) { return QCoreApplication::translate("Window", text); }

std::string path_bytes(const QString& path) { return QFile::encodeName(path).toStdString(); }

QString html_text(const std::string& text) { return pdf::shown_text(text).toHtmlEscaped(); }

QString menu_text(QString text) { return text.replace(u'&', QStringLiteral("&&")); }

}  // namespace soakwright::gui
