// SPDX-License-Identifier: GPL-3.0-or-later
// Fields that show what cannot be changed: disabled, and as easy to read as any other text.
#pragma once

#include <QWidget>

#include "app/gui/chart/chart_colours.h"

namespace soakwright::gui {

/// What is disabled in `part` is drawn in an ink that can be read, or again as the style draws it.
inline void show_as_read_only(QWidget* part, bool read_only) {
  if (part->testAttribute(Qt::WA_SetPalette) == read_only) return;
  QPalette own;
  if (read_only) {
    own = part->palette();
    own.setCurrentColorGroup(QPalette::Active);
    const QColor ink = ChartColours::of(own).faint_ink;
    for (const QPalette::ColorRole role : {QPalette::Text, QPalette::WindowText, QPalette::ButtonText})
      own.setColor(QPalette::Disabled, role, ink);
  }
  part->setPalette(own);
}

}  // namespace soakwright::gui
