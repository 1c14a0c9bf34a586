// SPDX-License-Identifier: GPL-3.0-or-later
// What a person sets for every record, in a dialog.
#pragma once

#include <QDialog>

#include "app/gui/preferences.h"

class QComboBox;
class QLineEdit;
class QSpinBox;

namespace soakwright::gui {

class PreferencesDialog : public QDialog {
  Q_OBJECT

 public:
  explicit PreferencesDialog(const Preferences& now, QWidget* parent = nullptr);

  [[nodiscard]] Preferences preferences() const;

 private:
  void build();

  QComboBox* colours_;
  QSpinBox* text_;
  QComboBox* unit_;
  QComboBox* time_;
  QLineEdit* trusted_;
};

}  // namespace soakwright::gui
