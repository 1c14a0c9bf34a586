// SPDX-License-Identifier: GPL-3.0-or-later
// Verifies a report off the GUI thread; what the latest request found is emitted.
#pragma once

#include <QObject>
#include <QString>
#include <atomic>
#include <memory>
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

  struct Request {
    QString report;
    QString modules;  ///< where the signing module is looked for; empty: where the program's own are
    QString trusted;  ///< certificates (PEM) that vouch for the signers'; empty: none is named
  };
  void start(const Request& request);
  /// Nothing more is heard of what was started; the thread ends at the work's next step.
  void cancel();
  /// Somebody waits for what was started.
  [[nodiscard]] bool busy() const { return heard_; }
  /// The thread works, for whatever was started last or before.
  [[nodiscard]] bool working() const { return thread_ != nullptr; }

 signals:
  void progressed(double share);
  void finished(const QString& report, const soakwright::gui::FoundChecks& found);

 private:
  void next();

  QThread* thread_ = nullptr;
  std::shared_ptr<std::atomic<bool>> cancelled_;  ///< of what runs
  std::optional<Request> wanted_;                 ///< to be verified after the one that runs
  bool heard_ = false;
};

}  // namespace soakwright::gui
