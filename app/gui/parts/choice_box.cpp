// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/choice_box.h"

#include <QKeyEvent>
#include <QWheelEvent>

namespace soakwright::gui {

ChoiceBox::ChoiceBox(QWidget* parent) : QComboBox(parent) { setFocusPolicy(Qt::StrongFocus); }

void ChoiceBox::wheelEvent(QWheelEvent* event) { event->ignore(); }

void ChoiceBox::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Space:
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_F4:
    case Qt::Key_Select:
      showPopup();
      return;
    case Qt::Key_Up:
    case Qt::Key_Down:
      if (event->modifiers().testFlag(Qt::AltModifier)) {
        showPopup();
        return;
      }
      break;
    default:
      break;
  }
  // The base class would choose by letters and arrows. What is around the box may use them.
  event->ignore();
}

}  // namespace soakwright::gui
