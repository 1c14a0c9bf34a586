// SPDX-License-Identifier: GPL-3.0-or-later
// Asks what a new procedure is made from: a published rule, the open log, a sample, or nothing. Its text is
// shown before it is made.
#pragma once

#include <QDialog>

#include "app/gui/data_folders.h"
#include "app/gui/open_case.h"
#include "core/draft.h"

class QComboBox;
class QDialogButtonBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QRadioButton;

namespace soakwright::gui {

class NewProcedureDialog : public QDialog {
  Q_OBJECT

 public:
  NewProcedureDialog(const OpenCase& open, const DataFolders& folders, QWidget* parent = nullptr);

  /// Of the procedure's file.
  [[nodiscard]] const std::string& text() const { return text_; }
  /// Where it came from.
  [[nodiscard]] QString words() const;

 private:
  enum class From { rule, log, sample, nothing };
  void build(QFormLayout* form);
  [[nodiscard]] From from() const;
  void chooseRule();
  void make();
  [[nodiscard]] Result<std::string> drafted() const;
  [[nodiscard]] Result<std::string> fromRule() const;

  OpenCase open_;
  RuleShelf shelf_;
  std::string text_;
  QRadioButton* of_rule_;
  QRadioButton* of_log_;
  QRadioButton* of_sample_;
  QRadioButton* empty_;
  QComboBox* rule_;
  QComboBox* material_;
  QComboBox* lower_by_;
  QLineEdit* thickness_;
  QLineEdit* hold_;
  QLineEdit* hold_time_;
  QComboBox* sample_;
  QPlainTextEdit* preview_;
  QLabel* problem_;
  QDialogButtonBox* buttons_;
};

/// A procedure that says only what every procedure must.
std::string empty_procedure(TemperatureUnit unit);

}  // namespace soakwright::gui
