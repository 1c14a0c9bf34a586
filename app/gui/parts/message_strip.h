// SPDX-License-Identifier: GPL-3.0-or-later
// One line across the window that stays until it is answered: what is so, and buttons for what can be done
// about it.
#pragma once

#include <QFrame>
#include <QStringList>
#include <vector>

class QHBoxLayout;
class QIcon;
class QLabel;
class QPushButton;

namespace soakwright::gui {

class MessageStrip : public QFrame {
  Q_OBJECT

 public:
  static constexpr std::size_t kFirstButton = 0;
  static constexpr std::size_t kSecondButton = 1;

  /// `name` is what it is called to assistive technology; `buttons` from left to right.
  MessageStrip(const QString& name, const QStringList& buttons, QWidget* parent = nullptr);

  /// Shows the text; hides the strip where it is empty. `tip` is all of it where the text is cut.
  void say(const QString& text, const QString& tip = {});
  /// In place of the warning sign.
  void setSign(const QIcon& sign);
  [[nodiscard]] QString text() const;
  [[nodiscard]] QPushButton* button(std::size_t index) const { return buttons_[index]; }

 signals:
  void pressed(std::size_t button);

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void fit();
  void colour();

  QLabel* sign_;
  QLabel* words_;
  QString text_;
  std::vector<QPushButton*> buttons_;
  bool colouring_ = false;
};

}  // namespace soakwright::gui
