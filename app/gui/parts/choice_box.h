// SPDX-License-Identifier: GPL-3.0-or-later
// A box of choices that a wheel or a key passing by does not change: a choice is made from the opened list,
// by click or with Enter. Each change of such a box reads and evaluates the record again.
#pragma once

#include <QComboBox>

namespace soakwright::gui {

class ChoiceBox : public QComboBox {
  Q_OBJECT

 public:
  explicit ChoiceBox(QWidget* parent = nullptr);

 protected:
  /// Left to what lies around the box, which then scrolls.
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
};

}  // namespace soakwright::gui
