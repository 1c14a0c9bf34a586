// SPDX-License-Identifier: GPL-3.0-or-later
// Runs long work off the GUI thread, one piece at a time; a newer piece cancels the one before it, whose
// outcome is dropped. Signals arrive on the thread that owns this object.
#pragma once

#include <QObject>
#include <QThread>
#include <atomic>
#include <functional>
#include <memory>

#include "app/gui/open_case.h"
#include "app/gui/refused_log.h"

namespace soakwright::gui {

/// What a piece of work came to: what is open now, or why it is not and what can be settled about it.
struct WorkOutcome {
  Result<OpenCase> open;
  std::optional<RefusedLog> refused = std::nullopt;
};

class BackgroundWork : public QObject {
  Q_OBJECT

 public:
  using Outcome = std::shared_ptr<const WorkOutcome>;
  using Task = std::function<WorkOutcome(const Watch&)>;

  explicit BackgroundWork(QObject* parent = nullptr);
  ~BackgroundWork() override;

  void start(Task task);
  /// Nothing more is heard of what runs; the thread is free again at the work's next step.
  void cancel();
  [[nodiscard]] bool busy() const { return busy_; }

 signals:
  void busyChanged(bool busy);
  void progressed(double share);
  void finished(const soakwright::gui::BackgroundWork::Outcome& outcome);

 private:
  void setBusy(bool busy);

  QThread thread_;
  QObject* inside_ = nullptr;  ///< lives in the thread; tasks are queued to it
  std::shared_ptr<std::atomic<bool>> cancelled_;
  quint64 ticket_ = 0;
  bool busy_ = false;
};

}  // namespace soakwright::gui
