// SPDX-License-Identifier: GPL-3.0-or-later
// Asks what of a thermocouple is to be excluded, and why. Without a reason there is no exclusion.
#pragma once

#include <QDialog>
#include <memory>
#include <optional>

#include "core/procedure/job/job_changes.h"
#include "core/report/chart.h"

class QCheckBox;
class QComboBox;
class QDialogButtonBox;
class QLineEdit;

namespace soakwright::gui {

class ExcludeDialog : public QDialog {
  Q_OBJECT

 public:
  /// `channel` is chosen at first; `time` too, else the whole record.
  ExcludeDialog(std::shared_ptr<const Record> record, std::optional<std::size_t> channel,
                std::optional<std::pair<double, double>> time, QWidget* parent = nullptr);

  /// What is to be written into the job.
  [[nodiscard]] JobChange change() const;

 private:
  void check();

  std::shared_ptr<const Record> record_;
  QComboBox* channel_;
  QCheckBox* whole_;
  QLineEdit* from_;
  QLineEdit* to_;
  QLineEdit* reason_;
  QDialogButtonBox* buttons_;
};

/// Why `name` is excluded from the evaluation; none if the person cancels.
std::optional<QString> ask_reason(QWidget* parent, const QString& title, const QString& name);

}  // namespace soakwright::gui
