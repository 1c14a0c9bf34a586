// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/background/curve_work.h"

#include <QThread>
#include <utility>

#include "core/problems/caught.h"

namespace soakwright::gui {

CurveWork::~CurveWork() {
  if (thread_) thread_->wait();
  delete thread_;
}

void CurveWork::start(const Analysis& analysis, const WantedCurves& wanted) {
  parts_ = wanted;
  ++ticket_;
  wanted_ = std::make_shared<const Analysis>(analysis);
  if (!thread_) next();
}

void CurveWork::next() {
  auto analysis = std::exchange(wanted_, nullptr);
  if (!analysis) return;
  auto curves = std::make_shared<std::shared_ptr<const CurveSet>>();
  const quint64 ticket = ticket_;
  // Without memory for them there are no curves; the verdict does not need them.
  thread_ = QThread::create([curves, analysis, parts = parts_] {
    static_cast<void>(caught(analysis->record->file, [&]() -> Problems {
      *curves = curve_set(*analysis, parts);
      return {};
    }));
  });
  thread_->setObjectName(QStringLiteral("curves"));
  connect(thread_, &QThread::finished, this, [this, curves, ticket] {
    thread_->deleteLater();
    thread_ = nullptr;
    if (ticket == ticket_ && *curves) emit ready(*curves);
    next();
  });
  thread_->start();
}

}  // namespace soakwright::gui
