// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/background/report_verification.h"

#include <QFile>
#include <QThread>
#include <filesystem>
#include <utility>

#include "app/gui/background/progress_steps.h"
#include "app/gui/background/report_printer.h"
#include "app/modules/signing_loader.h"
#include "core/problems/caught.h"

namespace soakwright::gui {
namespace {

constexpr double kEvaluating = 0.5;  ///< of the progress; the rest is printing the pages again

FoundChecks verified(const VerifyOrder& order, const std::filesystem::path& folder, const Watch& watch) {
  return caught(order.report, [&]() -> FoundChecks {
    const auto module = modules::SigningModule::open("verifying a report is", folder);
    if (!module) return module.problems();
    const Watch evaluating{[&watch](double share) { watch.report(kEvaluating * share); }, watch.cancelled};
    const Watch printing{[&watch](double share) { watch.report(kEvaluating + (1.0 - kEvaluating) * share); },
                         watch.cancelled};
    return module.value().verify(order, report_printer(printing), evaluating);
  });
}

}  // namespace

ReportVerification::~ReportVerification() {
  cancel();
  if (thread_) thread_->wait();
  delete thread_;
}

void ReportVerification::start(const Request& request) {
  cancel();
  heard_ = true;
  wanted_ = request;
  if (!thread_) next();
}

void ReportVerification::cancel() {
  if (cancelled_) *cancelled_ = true;
  heard_ = false;
  wanted_.reset();
}

void ReportVerification::next() {
  const auto request = std::exchange(wanted_, std::nullopt);
  if (!request) return;
  const auto cancelled = cancelled_ = std::make_shared<std::atomic<bool>>(false);
  auto found = std::make_shared<std::optional<FoundChecks>>();
  const VerifyOrder order{QFile::encodeName(request->report).toStdString(),
                          QFile::encodeName(request->trusted).toStdString()};
  const std::filesystem::path folder = QFile::encodeName(request->modules).toStdString();
  thread_ = QThread::create([this, found, order, folder, cancelled] {
    const Watch watch{in_steps([this, cancelled](double share) {
                        QMetaObject::invokeMethod(this, [this, cancelled, share] {
                          if (!*cancelled) emit progressed(share);
                        });
                      }),
                      cancelled.get()};
    *found = verified(order, folder, watch);
  });
  thread_->setObjectName(QStringLiteral("verifying"));
  connect(thread_, &QThread::finished, this, [this, found, cancelled, path = request->report] {
    thread_->deleteLater();
    thread_ = nullptr;
    if (!*cancelled && *found) {
      heard_ = false;
      emit finished(path, **found);
    }
    if (!thread_) next();
  });
  thread_->start();
}

}  // namespace soakwright::gui
