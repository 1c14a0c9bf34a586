// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/background/report_verification.h"

#include <QFile>
#include <QThread>
#include <filesystem>
#include <memory>
#include <utility>

#include "app/gui/background/report_printer.h"
#include "app/modules/signing_loader.h"
#include "core/problems/caught.h"

namespace soakwright::gui {
namespace {

FoundChecks verified(const std::string& report, const std::filesystem::path& folder) {
  return caught(report, [&]() -> FoundChecks {
    const auto module = modules::SigningModule::open("verifying a report is", folder);
    if (!module) return module.problems();
    return module.value().verify({report, {}}, report_printer());
  });
}

}  // namespace

ReportVerification::~ReportVerification() {
  if (thread_) thread_->wait();
  delete thread_;
}

void ReportVerification::start(const QString& report, const QString& modules) {
  heard_ = false;
  wanted_ = Request{report, modules};
  if (!thread_) next();
}

void ReportVerification::forget() {
  heard_ = false;
  wanted_.reset();
}

void ReportVerification::next() {
  const auto request = std::exchange(wanted_, std::nullopt);
  if (!request) return;
  heard_ = true;
  auto found = std::make_shared<std::optional<FoundChecks>>();
  const std::string report = QFile::encodeName(request->report).toStdString();
  const std::filesystem::path folder = QFile::encodeName(request->modules).toStdString();
  thread_ = QThread::create([found, report, folder] { *found = verified(report, folder); });
  thread_->setObjectName(QStringLiteral("verifying"));
  connect(thread_, &QThread::finished, this, [this, found, path = request->report] {
    thread_->deleteLater();
    thread_ = nullptr;
    if (std::exchange(heard_, false) && *found) emit finished(path, **found);
    if (!thread_) next();
  });
  thread_->start();
}

}  // namespace soakwright::gui
