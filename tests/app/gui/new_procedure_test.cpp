// SPDX-License-Identifier: GPL-3.0-or-later
// A procedure made in the window: from a published rule, from the log, from a sample, or empty; shown before
// it is made, in no file until it is saved.

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QRadioButton>

#include "app/gui/panes/procedure_pane.h"
#include "app/gui/parts/new_procedure_dialog.h"
#include "app/gui/parts/summary_bar.h"
#include "core/procedure/procedure_file.h"
#include "tests/app/gui/dialog_answers.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

namespace {

QWidget* named(QWidget* in, const QString& name) {
  for (auto* widget : in->findChildren<QWidget*>())
    if (widget->accessibleName() == name) return widget;
  return nullptr;
}

}  // namespace

class NewProcedureTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString log_, job_;

 private slots:
  void init() {
    const made::Case files = made::drum_case(files_.path());
    log_ = files.log;
    job_ = files.job;
  }

  void from_a_published_rule_for_a_thickness() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    answer([](QWidget* dialog) {
      auto* rule = qobject_cast<QComboBox*>(named(dialog, QStringLiteral("Rule")));
      // The thickness is asked for before anything is made.
      rule->setCurrentIndex(rule->findData(QStringLiteral("asme-viii-1-ucs-56")));
      if (buttonIn(dialog, QStringLiteral("Create"))->isEnabled()) return false;
      rule->setCurrentIndex(rule->findData(QStringLiteral("as-4458-c-mn")));
      qobject_cast<QLineEdit*>(named(dialog, QStringLiteral("Thickness")))->setText(QStringLiteral("38 mm"));
      QAbstractButton* create = buttonIn(dialog, QStringLiteral("Create"));
      // This rule leaves the hold to the user, and the window names its own field for it.
      const QString missing = dialog->findChild<QLabel*>(QStringLiteral("problem"))->text();
      if (create->isEnabled() || !missing.contains(u"Hold range") || missing.contains(u"--hold"))
        return false;
      qobject_cast<QLineEdit*>(named(dialog, QStringLiteral("Hold range")))
          ->setText(QStringLiteral("590-620"));
      qobject_cast<QLineEdit*>(named(dialog, QStringLiteral("Hold time")))->setText(QStringLiteral("90 min"));
      if (!create->isEnabled()) return false;
      create->click();
      return true;
    });
    real.action(QStringLiteral("New procedure…"))->trigger();
    QVERIFY(real.settled());
    const OpenCase& open = real.window.session().open();
    QVERIFY2(open.analysis.verdicts, qPrintable(real.window.session().sheetTexts().join(u'\n')));
    QVERIFY(open.procedure_path.isEmpty());
    QCOMPARE(open.analysis.procedure->thickness->millimetres(), 38.0);
    QVERIFY(real.window.isWindowModified());
    QVERIFY(real.part<ProcedurePane>()->isVisible());
    const QString path = files_.filePath(QStringLiteral("rule.toml"));
    QVERIFY(real.window.writeProcedure(path));
    QVERIFY(real.settled());
    QVERIFY(read_procedure(path.toStdString()).ok());
    QCOMPARE(real.window.session().open().procedure_path, path);
    QVERIFY(!real.window.isWindowModified());
  }

  void from_the_log_with_limits_that_it_meets() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    answer([](QWidget* dialog) {
      for (auto* one : dialog->findChildren<QRadioButton*>())
        if (one->text().contains(u"open &log")) one->setChecked(true);
      buttonIn(dialog, QStringLiteral("Create"))->click();
      return true;
    });
    real.action(QStringLiteral("New procedure…"))->trigger();
    QVERIFY(real.settled());
    QVERIFY(real.window.session().procedureText().find("flag = \"proposal\"") != std::string::npos);
    // Generous limits for what the log shows are met by it, or left open; never failed.
    QVERIFY(real.part<SummaryBar>()->word() != u"Not met");
    QVERIFY(real.window.session().open().analysis.verdicts);
  }

  void from_a_sample_and_empty_without_a_log() {
    RealWindow real;
    answer([](QWidget* dialog) {
      for (auto* one : dialog->findChildren<QRadioButton*>())
        if (one->text().contains(u"&sample")) one->setChecked(true);
      buttonIn(dialog, QStringLiteral("Create"))->click();
      return true;
    });
    real.action(QStringLiteral("New procedure…"))->trigger();
    QVERIFY(real.settled());
    QVERIFY(real.window.session().open().analysis.procedure);
    QVERIFY(real.part<ProcedurePane>()->isVisible());
    real.window.startProcedure(empty_procedure(TemperatureUnit::celsius), QStringLiteral("new procedure"));
    QVERIFY(real.settled());
    // Nothing is evaluated against what says nothing.
    QVERIFY(!real.part<ProcedurePane>()->message().isEmpty());
    QVERIFY(!real.action(QStringLiteral("Save…"))->isEnabled());
  }

  void a_new_one_never_goes_into_the_file_that_the_job_names() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    const QString named_by_job = files_.filePath(QStringLiteral("htp-021.toml"));
    QFile file(named_by_job);
    QVERIFY(file.open(QIODevice::ReadOnly));
    const QByteArray before = file.readAll();
    QString text = QString::fromUtf8(before);
    real.window.startProcedure(
        text.replace(QStringLiteral("rate_max = 140"), QStringLiteral("rate_max = 90")).toStdString(),
        QStringLiteral("new procedure"));
    QVERIFY(real.settled());
    QVERIFY(real.window.session().procedureFile().isEmpty());
    QCOMPARE(real.part<SummaryBar>()->word(), QStringLiteral("Not met (not saved)"));
    // Also where the record is read again meanwhile.
    real.window.session().change({ColumnNames{{"TC2"}}, "name", "TC2 top"});
    QVERIFY(real.settled());
    QVERIFY(real.window.session().procedureFile().isEmpty());
    QCOMPARE(real.part<SummaryBar>()->word(), QStringLiteral("Not met (not saved)"));
    real.window.session().edits().undo();
    real.window.session().edits().undo();
    QVERIFY(real.settled());
    QCOMPARE(real.part<SummaryBar>()->word(), QStringLiteral("Met"));
    QCOMPARE(real.window.session().procedureFile(), named_by_job);
    QFile again(named_by_job);
    QVERIFY(again.open(QIODevice::ReadOnly));
    QCOMPARE(again.readAll(), before);
  }
};

QTEST_MAIN(NewProcedureTest)
#include "new_procedure_test.moc"
