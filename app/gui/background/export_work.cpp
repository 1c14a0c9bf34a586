// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/background/export_work.h"

#include <QThread>
#include <utility>

#include "core/problems/caught.h"

namespace soakwright::gui {

ExportWork::~ExportWork() {
  if (thread_) thread_->wait();
  delete thread_;
}

bool ExportWork::start(const QString& path, std::function<Problems()> write) {
  if (busy()) return false;
  auto problems = std::make_shared<Problems>();
  thread_ = QThread::create(
      [problems, path, write = std::move(write)] { *problems = caught(path.toStdString(), write); });
  thread_->setObjectName(QStringLiteral("writing"));
  connect(thread_, &QThread::finished, this, [this, path, problems] {
    thread_->deleteLater();
    thread_ = nullptr;
    emit busyChanged(false);
    emit finished(path, *problems);
  });
  emit busyChanged(true);
  thread_->start();
  return true;
}

}  // namespace soakwright::gui
