// SPDX-License-Identifier: GPL-3.0-or-later
// A line to find text in the list above it; hidden until it is asked for.
#pragma once

#include <QFrame>

class QLabel;
class QLineEdit;

namespace soakwright::gui {

class FindBar : public QFrame {
  Q_OBJECT

 public:
  explicit FindBar(QWidget* parent = nullptr);

  /// Shows the bar, ready to type in.
  void start();
  /// What came of the search.
  void sayFound(bool found);
  [[nodiscard]] QLineEdit* line() const { return line_; }
  [[nodiscard]] QString said() const;

 signals:
  /// The text is wanted from the chosen line on (0), behind it (1) or before it (-1).
  void wanted(const QString& text, int step);
  void closed();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QLineEdit* line_;
  QLabel* said_;
};

}  // namespace soakwright::gui
