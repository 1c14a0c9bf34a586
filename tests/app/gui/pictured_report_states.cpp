// SPDX-License-Identifier: GPL-3.0-or-later
// The record beside something else, and reports: opened with their checks, signed, on paper.

#include <QApplication>
#include <QDialog>
#include <QLineEdit>
#include <QTabWidget>
#include <QTimer>

#include "app/gui/panes/finding_pane.h"
#include "app/gui/panes/forms/key_form.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/panes/settings_comparison.h"
#include "app/gui/parts/sign_dialog.h"
#include "tests/app/gui/dialog_answers.h"
#include "tests/app/gui/pictured_states.h"
#include "tests/app/gui/report_steps.h"

namespace soakwright::gui::pictured {
namespace {

/// Pictures the dialog that comes up next, once it has been there for a while, and closes it.
void keep_next_dialog(const QString& name, int after_ms) {
  QTimer::singleShot(after_ms, qApp, [name] {
    QWidget* dialog = QApplication::activeModalWidget();
    if (!dialog) return;
    keep(*dialog, name);
    dialog->close();
  });
}

/// The report opened, read only; then its checks.
void picture_report(const Files& f, const QString& dark) {
  const QString name = QStringLiteral("60-%1report-read-only").arg(dark);
  const QString checks_name = QStringLiteral("61-%1report-checks").arg(dark);
  if (!is_wanted(name) && !is_wanted(checks_name)) return;
  SigningWindow real;
  ReportChecks* checks = real.opened(f.report);
  if (!checks) qFatal("the report is not verified");
  QTest::qWait(250);
  keep(real.window, name);
  keep(*checks, checks_name);
  checks->verify({f.report, QFileInfo(QStringLiteral(SOAKWRIGHT_PROGRAM)).absolutePath(), {}});
  QTest::qWait(20);
  keep(*checks, QStringLiteral("62-%1report-being-verified").arg(dark));
  checks->cancel();
  keep(*checks, QStringLiteral("63-%1report-cancelled").arg(dark));
}

void picture_sign_dialog(const Files& f, const QString& dark) {
  const QString name = QStringLiteral("64-%1sign").arg(dark);
  if (!is_wanted(name)) return;
  SignDialog dialog(f.report, QFileInfo(QStringLiteral(SOAKWRIGHT_PROGRAM)).absolutePath());
  dialog.show();
  for (auto* line : dialog.findChildren<QLineEdit*>()) {
    // No key: what is refused is said below the fields.
    if (line->accessibleName() == u"Key") line->setText(f.procedure);
    if (line->accessibleName() == u"Name") line->setText(QStringLiteral("T. Lindqvist"));
    if (line->accessibleName() == u"Save as") line->setText(f.report + QStringLiteral(".signed.pdf"));
  }
  keep(dialog, name);
  buttonIn(&dialog, QStringLiteral("Sign"))->click();
  if (!QTest::qWaitFor([&dialog] { return !dialog.problem().isEmpty(); }, kLong_ms))
    qFatal("nothing is refused");
  keep(dialog, QStringLiteral("65-%1sign-refused").arg(dark));
}

}  // namespace

void comparing_states(const Files& f) {
  state(QStringLiteral("46-deviations"), [&](RealWindow& r) {
    r.open({QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/sample-logs/w-118-late-and-dipping/job.toml")});
    auto* list = r.part<ListPane>(QStringLiteral("Deviations"));
    qobject_cast<QTabWidget*>(list->parentWidget()->parentWidget())->setCurrentWidget(list);
  });
  state(QStringLiteral("47-another-record"), [&](RealWindow& r) { lay_over(r, f); });
  state(QStringLiteral("48-other-settings"), [&](RealWindow& r) {
    r.open({f.dip, f.procedure});
    r.action(QStringLiteral("With other evaluation settings…"))->trigger();
    QLineEdit* allowed = r.part<SettingsComparison>()->settings()->line("excursion_allowed");
    allowed->setText(QStringLiteral("15 min"));
    QTest::keyClick(allowed, Qt::Key_Return);
    while (r.part<SettingsComparison>()->busy()) QTest::qWait(10);
  });
}

void report_states(const Files& f, const QString& dark) {
  picture_report(f, dark);
  picture_sign_dialog(f, dark);
  const QString preview = QStringLiteral("56-%1print-preview").arg(dark);
  state(preview + QStringLiteral("-closed"), [&](RealWindow& r) {
    r.open({f.job});
    keep_next_dialog(preview, 3000);
    r.action(QStringLiteral("Print preview…"))->trigger();
  });
  state(QStringLiteral("66-%1findings-in-time").arg(dark), [&](RealWindow& r) {
    r.open({f.dip, f.strict});
    auto* pane = r.part<FindingPane>();
    qobject_cast<QTabWidget*>(pane->parentWidget()->parentWidget())->setCurrentWidget(pane);
    pane->order()->setCurrentIndex(1);
  });
}

}  // namespace soakwright::gui::pictured
