// SPDX-License-Identifier: GPL-3.0-or-later
// What was refused, in the words of the command line, under the verdict line until it is put away. What is
// open stays as it is meanwhile.
#pragma once

#include <QFrame>
#include <QStringList>

class QLabel;
class QToolButton;

namespace soakwright::gui {

class ErrorBar : public QFrame {
  Q_OBJECT

 public:
  explicit ErrorBar(QWidget* parent = nullptr);

  void say(const QString& title, const QStringList& texts);
  void putAway();
  [[nodiscard]] QStringList texts() const { return texts_; }

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QLabel* title_;
  QLabel* words_;
  QToolButton* away_;
  QStringList texts_;
};

}  // namespace soakwright::gui
