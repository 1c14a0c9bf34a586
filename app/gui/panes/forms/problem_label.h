// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong with a table of a form as a whole, in the colour of what is not met; takes no room otherwise.
#pragma once

#include <QLabel>

namespace soakwright::gui {

class ProblemLabel : public QLabel {
 public:
  explicit ProblemLabel(QWidget* parent);
  /// Empty: nothing is wrong.
  void say(const QString& problem);
  [[nodiscard]] QString said() const { return isHidden() ? QString() : text(); }
};

}  // namespace soakwright::gui
