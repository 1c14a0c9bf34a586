// SPDX-License-Identifier: GPL-3.0-or-later
// Tool tips with text that came from a file: Qt takes a tip that looks like markup for markup.
#pragma once

#include <QString>

namespace soakwright::gui {

/// `text` as a tip that shows every character of it, with its line ends; empty stays empty.
inline QString plain_tip(const QString& text) {
  if (text.isEmpty()) return {};
  return QStringLiteral("<p style='white-space:pre-wrap'>%1</p>").arg(text.toHtmlEscaped());
}

}  // namespace soakwright::gui
