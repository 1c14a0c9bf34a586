// SPDX-License-Identifier: GPL-3.0-or-later
// Steps of the tests that open, verify and sign reports in the window.
#pragma once

#include <QFile>
#include <QFileInfo>

#include "app/gui/panes/list_pane.h"
#include "app/gui/panes/report_checks.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

namespace soakwright::gui {

inline constexpr int kLong_ms = 60'000;

inline QByteArray bytes_at(const QString& path) {
  QFile file(path);
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

/// The window with the signing module of this build.
class SigningWindow : public RealWindow {
 public:
  SigningWindow() {
    window.setFolders({{QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/resources/rules")},
                       QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/sample-logs"),
                       QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/resources/manual"),
                       QFileInfo(QStringLiteral(SOAKWRIGHT_PROGRAM)).absolutePath()});
  }

  /// Exports the report of the job. False where it is not written.
  [[nodiscard]] bool exported(const QString& job, const QString& report) {
    if (!open({job})) return false;
    QSignalSpy written(&window, &MainWindow::exported);
    window.exportReport(report);
    return written.wait(kLong_ms) && written.first()[1].toBool();
  }

  /// Opens the report and waits until it is verified; null where it is not.
  [[nodiscard]] ReportChecks* opened(const QString& report) {
    window.openPaths({report});
    return settled() ? verified() : nullptr;
  }
  [[nodiscard]] ReportChecks* verified() {
    auto* checks = window.findChild<ReportChecks*>();
    return checks && QTest::qWaitFor([checks] { return !checks->busy(); }, kLong_ms) ? checks : nullptr;
  }
};

/// The report of the case, exported by a window of its own; empty where it is not written.
inline QString written_report(const made::Case& made, const QTemporaryDir& folder) {
  const QString report = folder.filePath(QStringLiteral("d3-n2.pdf"));
  SigningWindow real;
  return real.exported(made.job, report) ? report : QString();
}

/// The state of a check, as the list shows it.
inline QString state_of(const ReportChecks& checks, const QString& check) {
  for (const ListLine& line : checks.list()->lines().content().lines)
    if (line.cells[0] == check) return line.cells[1];
  return QStringLiteral("no such check");
}

}  // namespace soakwright::gui
