// SPDX-License-Identifier: GPL-3.0-or-later
// Answers to the dialogs that the window will open: to be given before what opens them.
#pragma once

#include <QAbstractButton>
#include <QApplication>
#include <QLineEdit>
#include <QTimer>
#include <functional>
#include <memory>

namespace soakwright::gui {

/// Looks for a dialog until `act` has answered one.
inline void answer(std::function<bool(QWidget* dialog)> act) {
  auto* timer = new QTimer(qApp);
  QObject::connect(timer, &QTimer::timeout, timer, [timer, act = std::move(act)] {
    QWidget* dialog = QApplication::activeModalWidget();
    if (!dialog) return;
    timer->stop();
    if (act(dialog))
      timer->deleteLater();
    else
      timer->start(20);
  });
  timer->start(20);
}

inline QAbstractButton* buttonIn(QWidget* dialog, const QString& text) {
  for (auto* button : dialog->findChildren<QAbstractButton*>())
    if (button->text().remove(u'&') == text) return button;
  return nullptr;
}

/// Presses the button of that text, once there is one that can be pressed.
inline std::function<bool(QWidget*)> press(const QString& text) {
  return [text](QWidget* dialog) {
    QAbstractButton* button = buttonIn(dialog, text);
    if (!button || !button->isEnabled()) return false;
    button->click();
    return true;
  };
}

/// Types into the line called "Reason" and presses the button of the dialog's own name, or Exclude.
inline std::function<bool(QWidget*)> giveReason(const QString& reason) {
  return [reason](QWidget* dialog) {
    for (auto* line : dialog->findChildren<QLineEdit*>())
      if (line->accessibleName() == u"Reason") line->setText(reason);
    for (const QString& text : {QStringLiteral("Do not evaluate"), QStringLiteral("Exclude")})
      if (QAbstractButton* button = buttonIn(dialog, text); button && button->isEnabled()) {
        button->click();
        return true;
      }
    return false;
  };
}

}  // namespace soakwright::gui
