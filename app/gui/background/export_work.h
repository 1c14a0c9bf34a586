// SPDX-License-Identifier: GPL-3.0-or-later
// Writes one file at a time off the GUI thread and tells how it went.
#pragma once

#include <QObject>
#include <QString>
#include <functional>
#include <memory>

#include "core/problems/problem.h"

class QThread;

namespace soakwright::gui {

class ExportWork : public QObject {
  Q_OBJECT

 public:
  using QObject::QObject;
  /// Waits for what is being written: a file is written whole.
  ~ExportWork() override;

  /// False where another file is still being written.
  bool start(const QString& path, std::function<Problems()> write);
  [[nodiscard]] bool busy() const { return thread_ != nullptr; }

 signals:
  void busyChanged(bool busy);
  /// Empty problems: written.
  void finished(const QString& path, const soakwright::Problems& problems);

 private:
  QThread* thread_ = nullptr;
};

}  // namespace soakwright::gui
