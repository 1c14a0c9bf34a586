// SPDX-License-Identifier: GPL-3.0-or-later
// The open record under other evaluation settings, requirement by requirement beside what the procedure's own
// settings give. For comparison only: nothing is saved, and the verdict stays that of the procedure.
#pragma once

#include <QDialog>
#include <string>

#include "app/gui/background/background_work.h"

class QLabel;

namespace soakwright::gui {

class KeyForm;
class ListPane;

class SettingsComparison : public QDialog {
  Q_OBJECT

 public:
  explicit SettingsComparison(QWidget* parent = nullptr);

  /// Begins with the settings of the case's own procedure, which must have been evaluated.
  void show(const OpenCase& open);
  [[nodiscard]] KeyForm* settings() const { return settings_; }
  [[nodiscard]] ListPane* requirements() const { return requirements_; }
  [[nodiscard]] QString summary() const;
  /// Why the settings cannot be evaluated with; empty: they can.
  [[nodiscard]] QString problem() const;
  [[nodiscard]] bool busy() const { return work_.busy(); }

 private:
  using QDialog::show;
  void change(const std::string& key, const std::optional<std::string>& value);
  void showSettings();
  void showRequirements(const Report& other);

  OpenCase open_;
  std::string text_;  ///< of the procedure with the other settings
  KeyForm* settings_;
  ListPane* requirements_;
  QLabel* summary_;
  QLabel* problem_;
  BackgroundWork work_;
};

}  // namespace soakwright::gui
