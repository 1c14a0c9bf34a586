// SPDX-License-Identifier: GPL-3.0-or-later
// What is changed and in no file: it is shown as such, asked about before it is lost, never applied by
// itself. (Unsaved changes and the question before closing: common practice of desktop programs, no source.)

#include <QMessageBox>
#include <QPlainTextEdit>
#include <QProcess>
#include <QPushButton>
#include <QSignalSpy>
#include <QUndoStack>

#include "app/gui/parts/message_strip.h"
#include "app/gui/parts/summary_bar.h"
#include "core/procedure/job/job_file.h"
#include "tests/app/gui/dialog_answers.h"
#include "tests/app/gui/import_settings_steps.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

namespace {

const JobChange kAir{ColumnNames{{"TC3"}}, "role", "air"};

}  // namespace

class UnsavedChangesTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString log_, other_log_, job_, other_job_;

  static QString text_of(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
  }
  /// The first page of the report that the window exports, as poppler reads it.
  static QString exported(RealWindow& real, const QString& path) {
    QSignalSpy written(&real.window, &MainWindow::exported);
    real.window.exportReport(path);
    if (!written.wait(30'000) || !written[0][1].toBool()) return {};
    QProcess reader;
    reader.start(QStringLiteral("pdftotext"),
                 {QStringLiteral("-l"), QStringLiteral("1"), path, QStringLiteral("-")});
    return reader.waitForFinished(30'000) ? QString::fromUtf8(reader.readAllStandardOutput()) : QString();
  }
  static MessageStrip* strip(RealWindow& real, const char* name) {
    return real.part<MessageStrip>(QString::fromLatin1(name));
  }
  static bool change(RealWindow& real, const JobChange& change) {
    real.window.session().change(change);
    return real.settled();
  }
  /// Ends without a word, as in a crash: the changes are in the settings, nobody was asked.
  static void crash_with_changes(const QString& settings, const QString& job) {
    SavedSettings memory(settings);
    MainWindow window(memory);
    window.session().openFiles({job});
    QVERIFY(QTest::qWaitFor([&] { return !window.session().busy(); }, 60'000));
    window.session().change(kAir);
    QVERIFY(QTest::qWaitFor([&] { return !window.session().busy(); }, 60'000));
  }

 private slots:
  void init() {
    log_ = made::log(files_.path(), QStringLiteral("d3-n2.csv"), {});
    made::Run other;
    other.channels = 6;
    other_log_ = made::log(files_.path(), QStringLiteral("d3-n3.csv"), other);
    made::procedure(files_.path(), QStringLiteral("htp-021.toml"), 140, 100);
    job_ = made::job(files_.path(), QStringLiteral("job.toml"), QStringLiteral("d3-n2.csv"),
                     QStringLiteral("htp-021.toml"));
    other_job_ = made::job(files_.path(), QStringLiteral("other.toml"), QStringLiteral("d3-n2.csv"),
                           QStringLiteral("htp-021.toml"));
  }

  void while_anything_is_unsaved_title_and_summary_say_so() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    QVERIFY(!real.window.isWindowModified());
    QVERIFY(!strip(real, "Unsaved changes")->isVisible());
    QVERIFY(change(real, kAir));
    QVERIFY(real.window.isWindowModified());
    QVERIFY2(real.window.windowTitle().contains(QStringLiteral("not saved")),
             qPrintable(real.window.windowTitle()));
    QVERIFY(real.part<SummaryBar>()->word().contains(QStringLiteral("not saved")));
    QCOMPARE(strip(real, "Unsaved changes")->text(), QStringLiteral("Not in the job file: TC3: role air"));
    strip(real, "Unsaved changes")->button(0)->click();
    QVERIFY(real.settled());
    QVERIFY(!real.window.isWindowModified());
    QVERIFY(!strip(real, "Unsaved changes")->isVisible());
    QVERIFY(!real.part<SummaryBar>()->word().contains(QStringLiteral("not saved")));
  }

  void closing_asks_and_cancel_stays() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    QVERIFY(change(real, kAir));
    answer(press(QStringLiteral("Cancel")));
    QVERIFY(!real.window.close());
    QVERIFY(real.window.isVisible());
    QVERIFY(real.window.session().unsaved());
    answer(press(QStringLiteral("Discard")));
    QVERIFY(real.window.close());
    QCOMPARE(text_of(job_).count(QStringLiteral("air")), 0);
  }

  void what_was_discarded_does_not_come_back() {
    const QString settings = files_.filePath(QStringLiteral("discarded.ini"));
    {
      SavedSettings memory(settings);
      MainWindow window(memory);
      window.show();
      window.session().openFiles({job_});
      QVERIFY(QTest::qWaitFor([&] { return !window.session().busy(); }, 60'000));
      window.session().change(kAir);
      QVERIFY(QTest::qWaitFor([&] { return !window.session().busy(); }, 60'000));
      answer(press(QStringLiteral("Discard")));
      QVERIFY(window.close());
    }
    SavedSettings memory(settings);
    MainWindow window(memory);
    window.session().openFiles({job_});
    QVERIFY(QTest::qWaitFor([&] { return !window.session().busy(); }, 60'000));
    QVERIFY(!window.session().unsaved());
    for (auto* found : window.findChildren<MessageStrip*>()) QVERIFY(found->text().isEmpty());
  }

  void save_in_the_question_writes_the_job() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    QVERIFY(change(real, kAir));
    answer(press(QStringLiteral("Save")));
    QVERIFY(real.window.close());
    QVERIFY2(text_of(job_).contains(QStringLiteral("column = \"TC3\"\nrole = \"air\"")),
             qPrintable(text_of(job_)));
  }

  void close_all_and_another_log_ask_too() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    QVERIFY(change(real, kAir));
    answer(press(QStringLiteral("Cancel")));
    real.action(QStringLiteral("Close all"))->trigger();
    QVERIFY(real.window.session().open().has_record());
    answer(press(QStringLiteral("Cancel")));
    real.window.openPaths({other_log_});
    QVERIFY(real.settled());
    QCOMPARE(real.window.session().open().log_path, QDir::cleanPath(log_));
    QVERIFY(real.window.session().unsaved());
    answer(press(QStringLiteral("Discard")));
    real.window.openPaths({other_log_});
    QVERIFY(real.settled());
    QCOMPARE(real.window.session().open().log_path, other_log_);
    QVERIFY(!real.window.session().unsaved());
  }

  void another_log_opened_after_saving_is_not_taken_for_the_job_just_saved() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    QVERIFY(change(real, kAir));
    answer(press(QStringLiteral("Save")));
    real.window.openPaths({other_log_});
    QVERIFY(real.settled());
    QVERIFY(text_of(job_).contains(QStringLiteral("role = \"air\"")));
    QCOMPARE(real.window.session().open().log_path, other_log_);
    QVERIFY2(real.window.session().open().files.job.isEmpty(),
             qPrintable(real.window.session().open().files.job));
  }

  void after_a_crash_the_files_are_shown_as_they_are_until_restore_is_pressed() {
    const QString settings = files_.filePath(QStringLiteral("crash.ini"));
    crash_with_changes(settings, job_);
    SavedSettings memory(settings);
    MainWindow window(memory);
    window.show();
    window.session().openFiles({job_});
    QVERIFY(QTest::qWaitFor([&] { return !window.session().busy(); }, 60'000));
    QVERIFY(!window.session().unsaved());
    QVERIFY(window.session().open().analysis.record->channels[2].role == ThermocoupleRole::monitor);
    MessageStrip* left = nullptr;
    for (auto* found : window.findChildren<MessageStrip*>())
      if (found->accessibleName() == u"Changes of an earlier session") left = found;
    QVERIFY(left && left->isVisible());
    answer([](QWidget* dialog) {
      auto* box = qobject_cast<QMessageBox*>(dialog);
      if (!box || !box->text().contains(QStringLiteral("TC3: role air"))) return false;
      box->accept();
      return true;
    });
    left->button(2)->click();
    left->button(0)->click();
    QVERIFY(QTest::qWaitFor([&] { return !window.session().busy(); }, 60'000));
    QVERIFY(window.session().wanted() == std::vector<JobChange>{kAir});
    QVERIFY(window.session().open().analysis.record->channels[2].role == ThermocoupleRole::air);
    QVERIFY(!left->isVisible());
    // Undo leads back to the files.
    window.session().edits().undo();
    QVERIFY(QTest::qWaitFor([&] { return !window.session().busy(); }, 60'000));
    QVERIFY(!window.session().unsaved());
  }

  void changes_of_one_job_are_not_offered_for_another_on_the_same_log() {
    const QString settings = files_.filePath(QStringLiteral("two-jobs.ini"));
    crash_with_changes(settings, job_);
    SavedSettings memory(settings);
    MainWindow window(memory);
    window.session().openFiles({other_job_});
    QVERIFY(QTest::qWaitFor([&] { return !window.session().busy(); }, 60'000));
    for (auto* found : window.findChildren<MessageStrip*>()) QVERIFY(found->text().isEmpty());
    QVERIFY(!window.session().unsaved());
    window.session().openFiles({job_});
    QVERIFY(QTest::qWaitFor([&] { return !window.session().busy(); }, 60'000));
    int offered = 0;
    for (auto* found : window.findChildren<MessageStrip*>())
      if (!found->text().isEmpty()) ++offered;
    QCOMPARE(offered, 1);
  }

  void discarded_after_a_crash_is_not_offered_again() {
    const QString settings = files_.filePath(QStringLiteral("crash-discard.ini"));
    crash_with_changes(settings, job_);
    for (const bool first : {true, false}) {
      SavedSettings memory(settings);
      MainWindow window(memory);
      window.show();
      window.session().openFiles({job_});
      QVERIFY(QTest::qWaitFor([&] { return !window.session().busy(); }, 60'000));
      for (auto* found : window.findChildren<MessageStrip*>()) {
        if (found->accessibleName() != u"Changes of an earlier session") continue;
        QCOMPARE(found->isVisible(), first);
        if (first) found->button(1)->click();
      }
    }
  }

  void saving_shows_the_lines_that_change_and_undo_leads_back_over_it() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    const QString before = text_of(job_);
    QVERIFY(change(real, kAir));
    answer([](QWidget* dialog) {
      auto* lines = dialog->findChild<QPlainTextEdit*>();
      if (!lines || lines->toPlainText() != u"+ role = \"air\"") return false;
      return press(QStringLiteral("Cancel"))(dialog);
    });
    real.action(QStringLiteral("Save…"))->trigger();
    QCOMPARE(text_of(job_), before);
    answer(press(QStringLiteral("Save")));
    real.action(QStringLiteral("Save…"))->trigger();
    QVERIFY(real.settled());
    QVERIFY(text_of(job_) != before);
    QVERIFY(!real.window.session().unsaved());
    // The saved change can be undone: then the job file is what is not wanted.
    QVERIFY(real.window.session().edits().canUndo());
    real.window.session().edits().undo();
    QVERIFY(real.settled());
    QVERIFY(real.window.session().unsaved());
    QVERIFY(real.window.session().open().analysis.record->channels[2].role == ThermocoupleRole::monitor);
    writeInto(real, job_);
    QCOMPARE(text_of(job_), before);
    real.window.session().edits().redo();
    QVERIFY(real.settled());
    QVERIFY(real.window.session().open().analysis.record->channels[2].role == ThermocoupleRole::air);
  }

  void a_report_from_unsaved_settings_says_so() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    QVERIFY(real.window.session().report()->unsaved.empty());
    QVERIFY(change(real, kAir));
    QCOMPARE(real.window.session().report()->unsaved, std::vector<std::string>{"TC3: role air"});

    const QString path = real.folder.filePath(QStringLiteral("not-saved.pdf"));
    const QString text = exported(real, path);
    QVERIFY2(text.contains(QStringLiteral("NOT SAVED")), qPrintable(text.left(600)));
    QVERIFY(text.contains(QStringLiteral("TC3: role air")));
    // The changed job is inside, and what no file says is kept beside it: the report proves itself.
    QProcess verify;
    verify.start(QStringLiteral(SOAKWRIGHT_PROGRAM), {QStringLiteral("verify"), path});
    QVERIFY(verify.waitForFinished(30'000));
    const QString checks = QString::fromUtf8(verify.readAllStandardOutput());
    QVERIFY2(checks.contains(QStringLiteral("The result gives these pages again")), qPrintable(checks));
  }

  void the_report_is_in_the_unit_that_is_shown_or_in_both() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    const QString in_celsius = exported(real, real.folder.filePath(QStringLiteral("c.pdf")));
    QVERIFY(in_celsius.contains(QStringLiteral("°C")) && !in_celsius.contains(QStringLiteral("°F")));
    real.action(QStringLiteral("Certificate in °C and °F"))->trigger();
    const QString in_both = exported(real, real.folder.filePath(QStringLiteral("both.pdf")));
    QVERIFY(in_both.contains(QStringLiteral("°C")) && in_both.contains(QStringLiteral("°F")));
    real.action(QStringLiteral("Certificate in °C and °F"))->trigger();
    real.action(QStringLiteral("°F"))->trigger();
    const QString in_fahrenheit = exported(real, real.folder.filePath(QStringLiteral("f.pdf")));
    QVERIFY(in_fahrenheit.contains(QStringLiteral("°F")));
    // The units belong to the window: they stay when all files are closed.
    real.window.session().closeAll();
    QVERIFY(real.open({job_}));
    QCOMPARE(real.window.session().report()->unit, TemperatureUnit::fahrenheit);
  }
};

QTEST_MAIN(UnsavedChangesTest)
#include "unsaved_changes_test.moc"
