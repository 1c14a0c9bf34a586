// SPDX-License-Identifier: GPL-3.0-or-later
// Signs a report: which one, with whose key, as who, and into which file. It stays open until the report is
// signed or the user gives up; what was refused is said below the fields.
#pragma once

#include <QDialog>
#include <QString>

#include "app/gui/background/export_work.h"
#include "core/report/signing_border.h"

class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;
class QProgressBar;
class QPushButton;

namespace soakwright::gui {

class SignDialog : public QDialog {
  Q_OBJECT

 public:
  /// `report` is proposed; the signing module is looked for in `modules`, where the program's own are if that
  /// is empty.
  SignDialog(const QString& report, QString modules, QWidget* parent = nullptr);

  /// The file with the signature, once the dialog is accepted.
  [[nodiscard]] QString signedFile() const;
  /// Why it was not signed; empty: nothing was refused.
  [[nodiscard]] QString problem() const;
  /// While it signs the dialog stays.
  void reject() override;

 private:
  void build();
  QLineEdit* addLine(QGridLayout* grid, int row, const QString& name, const QString& help);
  void addFile(QGridLayout* grid, int row, QLineEdit* line, const QString& filter);
  void check();
  void sign();
  void take(const Problems& problems);
  void showBusy(bool busy);
  [[nodiscard]] SignOrder order() const;
  [[nodiscard]] bool mayReplace(const QString& path);

  QString modules_;
  ExportWork work_;
  QWidget* fields_;
  QLineEdit* report_ = nullptr;
  QLineEdit* key_ = nullptr;
  QLineEdit* certificate_ = nullptr;
  QLineEdit* password_ = nullptr;
  QLineEdit* name_ = nullptr;
  QComboBox* role_ = nullptr;
  QLineEdit* save_as_ = nullptr;
  QLabel* problem_;
  QProgressBar* progress_;
  QPushButton* sign_;
  QPushButton* cancel_;
};

}  // namespace soakwright::gui
