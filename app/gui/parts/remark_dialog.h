// SPDX-License-Identifier: GPL-3.0-or-later
// Asks for a remark at a moment of the record: what the log does not say and the chart is to show.
#pragma once

#include <QDialog>

#include "core/procedure/job/job_changes.h"
#include "core/record/record.h"

class QDialogButtonBox;
class QLineEdit;

namespace soakwright::gui {

class RemarkDialog : public QDialog {
  Q_OBJECT

 public:
  /// `at_s` is proposed, as the log prints it.
  RemarkDialog(const Record& record, double at_s, QWidget* parent = nullptr);

  /// What is to be written into the job.
  [[nodiscard]] JobChange change() const;

 private:
  void check();

  QLineEdit* at_;
  QLineEdit* text_;
  QDialogButtonBox* buttons_;
};

}  // namespace soakwright::gui
