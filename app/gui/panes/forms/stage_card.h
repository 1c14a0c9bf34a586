// SPDX-License-Identifier: GPL-3.0-or-later
// One stage of a procedure: its keys in fields, and what can be done with the stage as a whole.
#pragma once

#include <QFrame>

#include "app/gui/panes/forms/key_form.h"

class QToolButton;

namespace soakwright::gui {

class ProblemLabel;

class StageCard : public QFrame {
  Q_OBJECT

 public:
  StageCard(std::size_t entry, const std::string& kind, QWidget* parent = nullptr);

  [[nodiscard]] const std::string& kind() const { return kind_; }
  [[nodiscard]] KeyForm* form() const { return form_; }
  [[nodiscard]] QString problem() const;
  void show(const TomlShownTable& table, const QString& degree, bool last);
  /// `whole`: about the stage, not one of its keys; empty: nothing.
  void say(const std::map<std::string, QString>& problems, const QString& whole);

 signals:
  void removeWanted();
  /// Exchange with the stage before, or after.
  void moveWanted(bool down);

 private:
  std::size_t entry_;
  std::string kind_;
  ProblemLabel* problem_;
  QToolButton* up_;
  QToolButton* down_;
  KeyForm* form_;
};

}  // namespace soakwright::gui
