// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/background/background_work.h"

#include <utility>

#include "app/gui/background/progress_steps.h"
#include "core/problems/caught.h"

namespace soakwright::gui {
namespace {

/// Nothing may be thrown into Qt's event loop.
WorkOutcome without_exception(const BackgroundWork::Task& task, const Watch& watch) {
  try {
    return task(watch);
  } catch (...) {
    return {caught_problem({})};
  }
}

}  // namespace

BackgroundWork::BackgroundWork(QObject* parent) : QObject(parent), inside_(new QObject) {
  inside_->moveToThread(&thread_);
  connect(&thread_, &QThread::finished, inside_, &QObject::deleteLater);
  thread_.setObjectName(QStringLiteral("reading and evaluation"));
  thread_.start();
}

BackgroundWork::~BackgroundWork() {
  cancel();
  thread_.quit();
  thread_.wait();
}

void BackgroundWork::start(Task task) {
  if (cancelled_) *cancelled_ = true;
  cancelled_ = std::make_shared<std::atomic<bool>>(false);
  const quint64 ticket = ++ticket_;
  const auto cancelled = cancelled_;
  setBusy(true);
  QMetaObject::invokeMethod(
      inside_,
      [this, ticket, cancelled, task = std::move(task)] {
        if (*cancelled) return;
        const Watch watch{in_steps([this, ticket](double share) {
                            QMetaObject::invokeMethod(this, [this, ticket, share] {
                              if (ticket == ticket_ && busy_) emit progressed(share);
                            });
                          }),
                          cancelled.get()};
        auto outcome = std::make_shared<const WorkOutcome>(without_exception(task, watch));
        QMetaObject::invokeMethod(this, [this, ticket, outcome] {
          if (ticket != ticket_ || !busy_) return;
          setBusy(false);
          emit finished(outcome);
        });
      },
      Qt::QueuedConnection);
}

void BackgroundWork::cancel() {
  if (cancelled_) *cancelled_ = true;
  ++ticket_;
  setBusy(false);
}

void BackgroundWork::setBusy(bool busy) {
  if (busy_ == busy) return;
  busy_ = busy;
  emit busyChanged(busy);
}

}  // namespace soakwright::gui
