// SPDX-License-Identifier: GPL-3.0-or-later
// Verifies a report off the GUI thread; what the latest request found is emitted.
#pragma once

#include <QObject>
#include <QString>
#include <optional>
#include <vector>

#include "core/problems/problem.h"
#include "core/report/signing_border.h"

class QThread;

namespace soakwright::gui {

/// Or why the report could not be looked at.
using FoundChecks = Result<std::vector<CheckLine>>;

class ReportVerification : public QObject {
  Q_OBJECT

 public:
  using QObject::QObject;
  ~ReportVerification() override;

  /// The signing module is looked for in `modules`, where the program's own are if that is empty.
  void start(const QString& report, const QString& modules);
  /// Nothing more is heard of what runs.
  void forget();
  [[nodiscard]] bool busy() const { return thread_ != nullptr && heard_; }

 signals:
  void finished(const QString& report, const soakwright::gui::FoundChecks& found);

 private:
  struct Request {
    QString report, modules;
  };
  void next();

  QThread* thread_ = nullptr;
  std::optional<Request> wanted_;  ///< to be verified after the one that runs
  bool heard_ = false;             ///< somebody still waits for what runs
};

}  // namespace soakwright::gui
