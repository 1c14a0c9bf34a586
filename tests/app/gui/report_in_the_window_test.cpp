// SPDX-License-Identifier: GPL-3.0-or-later
// A report opened in the window: verified, and a case that can be read and not changed.

#include <QClipboard>
#include <QComboBox>
#include <QMenu>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QProcess>
#include <QPushButton>

#include "app/gui/panes/forms/job_heat_form.h"
#include "app/gui/panes/import_settings_pane.h"
#include "app/gui/panes/job_pane.h"
#include "app/gui/panes/procedure_pane.h"
#include "app/gui/parts/error_bar.h"
#include "app/gui/parts/message_strip.h"
#include "app/gui/parts/summary_bar.h"
#include "tests/app/gui/dialog_answers.h"
#include "tests/app/gui/report_steps.h"

using namespace soakwright;
using namespace soakwright::gui;

class ReportInTheWindowTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  made::Case case_;
  QString report_;

 private slots:
  void initTestCase() {
    case_ = made::drum_case(files_.path());
    report_ = written_report(case_, files_);
    QVERIFY(!report_.isEmpty());
  }

  void a_report_is_known_by_its_first_bytes() {
    QVERIFY(file_kind(report_) == FileKind::report);
    QVERIFY(file_kind(case_.log) == FileKind::log);
  }

  void a_report_opens_as_the_case_inside_and_every_check_is_listed() {
    SigningWindow real;
    ReportChecks* checks = real.opened(report_);
    QVERIFY(checks);
    QCOMPARE(real.part<SummaryBar>()->word(), QStringLiteral("Met"));
    const QString said = QStringLiteral("read from the report d3-n2.pdf, cannot be changed");
    QVERIFY2(real.part<SummaryBar>()->sentence().contains(said, Qt::CaseInsensitive),
             qPrintable(real.part<SummaryBar>()->sentence()));
    QVERIFY2(real.window.windowTitle().contains(said), qPrintable(real.window.windowTitle()));
    QVERIFY(checks->isVisible());
    QCOMPARE(state_of(*checks, QStringLiteral("Files")), QStringLiteral("holds"));
    QCOMPARE(state_of(*checks, QStringLiteral("Result")), QStringLiteral("holds"));
    QCOMPARE(state_of(*checks, QStringLiteral("Pages")), QStringLiteral("holds"));
    QCOMPARE(state_of(*checks, QStringLiteral("Signatures")), QStringLiteral("not shown"));
    QCOMPARE(checks->summary(), QStringLiteral("Nothing is wrong, but 1 check could not be shown to hold."));
    QVERIFY(checks->sign() == Sign::inconclusive);
    buttonIn(checks, QStringLiteral("Copy as text"))->click();
    const QString copied = QGuiApplication::clipboard()->text();
    QVERIFY2(copied.contains(QStringLiteral("Result\tholds\t")) && copied.contains(report_),
             qPrintable(copied));
    QCOMPARE(real.part<MessageStrip>(QStringLiteral("Report that is open"))->text(),
             QStringLiteral("d3-n2.pdf: ") + checks->summary());
    QTest::keyClick(checks, Qt::Key_Escape);
    QVERIFY(!checks->isVisible());
  }

  void nothing_of_it_can_be_changed() {
    SigningWindow real;
    QVERIFY(real.opened(report_));
    for (const char* text :
         {"Exclude…", "New job", "New procedure…", "Save…", "Save job as…", "Save procedure as…", "Close job",
          "Export report…", "Open review…", "Save review…", "Performed, reviewed, witnessed by…"}) {
      QAction* action = real.action(QString::fromUtf8(text));
      QVERIFY2(action && !action->isEnabled(), text);
    }
    for (const char* text : {"Export result…", "Export picture of the chart…", "Print report…", "Close all"})
      QVERIFY2(real.action(QString::fromUtf8(text))->isEnabled(), text);
    auto* job = real.part<JobPane>();
    QVERIFY(!job->field("", "client")->isEnabled() && job->text()->isReadOnly());
    QVERIFY(job->text()->toPlainText().contains(QStringLiteral("htp-021.toml")));
    QVERIFY(!job->findChild<JobHeatForm*>()->isEnabled());
    auto* procedure = real.part<ProcedurePane>();
    QVERIFY(procedure->text()->isReadOnly() && !procedure->text()->toPlainText().isEmpty());
    for (const char* text : {"Save…", "Save as…", "Open in a text editor", "New…", "Add stage"})
      QVERIFY2(!buttonIn(procedure, QString::fromUtf8(text))->isEnabled(), text);
    for (auto* box : real.part<ImportSettingsPane>()->findChildren<QComboBox*>())
      QVERIFY2(!box->isEnabled(), qPrintable(box->accessibleName()));
  }

  void the_session_refuses_every_edit_of_it() {
    SigningWindow real;
    QVERIFY(real.opened(report_));
    Session& session = real.window.session();
    const OpenFiles before = session.open().files;
    const std::string procedure = session.procedureText();
    session.change(JobChange{std::nullopt, "client", "\"Port Ellery\""});
    session.changeProcedure("soakwright = \"procedure 1\"\n", QStringLiteral("other"));
    session.newProcedure("soakwright = \"procedure 1\"\n", QStringLiteral("new"));
    session.newJob("soakwright = \"job 1\"\n", QStringLiteral("new"));
    session.restoreChanges({JobChange{std::nullopt, "client", "\"Port Ellery\""}}, std::nullopt);
    session.review(session.reviewNow(), QStringLiteral("review"));
    session.closeJob();
    QVERIFY(!session.busy() && !session.unsaved() && session.edits().count() == 0);
    QVERIFY(session.open().files == before && session.procedureText() == procedure);
    QVERIFY(!real.window.writeJobAs(files_.filePath(QStringLiteral("other-job.toml"))));
    QVERIFY(!real.window.writeProcedure(files_.filePath(QStringLiteral("other-procedure.toml"))));
    QVERIFY(!QFile::exists(files_.filePath(QStringLiteral("other-job.toml"))));
    QVERIFY(!QFile::exists(files_.filePath(QStringLiteral("other-procedure.toml"))));
    real.window.close();
    QVERIFY(!real.window.isVisible());
  }

  void recent_files_name_the_report_and_its_folder_goes_with_it() {
    SigningWindow real;
    ReportChecks* checks = real.opened(report_);
    QVERIFY(checks);
    QCOMPARE(real.memory.recent(), QStringList{report_});
    QCOMPARE(real.memory.last(), QStringList{report_});
    const QString inside = QFileInfo(real.window.session().open().log_path).absolutePath();
    QVERIFY(QFileInfo(inside).isDir());
    real.action(QStringLiteral("Close all"))->trigger();
    QVERIFY(!QFileInfo::exists(inside));
    QVERIFY(!checks->isVisible());
    QVERIFY(real.opened(report_));
    real.window.openPaths({case_.job});
    QVERIFY(real.settled());
    QCOMPARE(real.window.session().open().log_path, case_.log);
    QVERIFY(real.action(QStringLiteral("Exclude…"))->isEnabled());
    QVERIFY(real.action(QStringLiteral("New procedure…"))->isEnabled());
    QVERIFY(real.part<MessageStrip>(QStringLiteral("Report that is open"))->text().isEmpty());
  }

  void changes_of_the_log_itself_are_neither_offered_nor_forgotten() {
    SigningWindow real;
    QVERIFY(real.open({case_.log}));
    real.window.session().change(JobChange{std::nullopt, "client", "\"Port Ellery\""});
    QVERIFY(real.settled());
    const ChangesPlace place{real.window.session().logSha(), {}};
    const UnsavedWork kept = real.memory.changes(place);
    QVERIFY(!kept.none());
    SigningWindow other;
    other.memory.keepChanges(place, kept);
    QVERIFY(other.opened(report_));
    QVERIFY(other.part<MessageStrip>(QStringLiteral("Changes of an earlier session"))->text().isEmpty());
    QVERIFY(other.memory.changes(place) == kept);
  }

  void a_changed_byte_on_a_page_is_found() {
    const QString changed = files_.filePath(QStringLiteral("changed.pdf"));
    QByteArray bytes = bytes_at(report_);
    // In the first page's own stream, which no checksum of a file inside covers.
    const qsizetype page = bytes.indexOf("stream") + 60;
    bytes[page] = static_cast<char>(bytes[page] ^ 1);
    QFile file(changed);
    QVERIFY(file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size());
    file.close();
    SigningWindow real;
    ReportChecks* checks = real.opened(changed);
    QVERIFY(checks);
    QCOMPARE(state_of(*checks, QStringLiteral("Pages")), QStringLiteral("does not hold"));
    QCOMPARE(checks->summary(), QStringLiteral("1 check does not hold."));
    QVERIFY(checks->sign() == Sign::not_met);
    QVERIFY(checks->findChild<QPlainTextEdit*>()->toPlainText().startsWith(
        QStringLiteral("Pages: does not hold.")));
    QVERIFY(real.part<MessageStrip>(QStringLiteral("Report that is open"))
                ->text()
                .contains(QStringLiteral("1 check does not hold.")));
  }

  void a_pdf_that_is_no_report_is_refused_and_what_is_open_stays() {
    const QString other = made::write(files_.path(), QStringLiteral("other.pdf"),
                                      QStringLiteral("%PDF-1.4\nnothing of ours\n"));
    SigningWindow real;
    QVERIFY(real.open({case_.job}));
    real.window.openPaths({other});
    QVERIFY(real.settled());
    const auto* bar = real.part<ErrorBar>();
    QVERIFY(bar->isVisible());
    QVERIFY2(bar->texts().join(u' ').contains(QStringLiteral("other.pdf")),
             qPrintable(bar->texts().join(u' ')));
    QCOMPARE(real.window.session().open().log_path, case_.log);
    QVERIFY(!real.window.findChild<ReportChecks*>());
    real.window.session().openFiles({report_, case_.log});
    QVERIFY2(bar->texts().join(u' ').contains(QStringLiteral("open it without other files")),
             qPrintable(bar->texts().join(u' ')));
  }

  void a_report_that_is_cut_off_is_refused_for_the_reason_that_the_command_line_states() {
    const QString cut = files_.filePath(QStringLiteral("cut.pdf"));
    const QByteArray bytes = bytes_at(report_);
    QFile file(cut);
    QVERIFY(file.open(QIODevice::WriteOnly) && file.write(bytes.left(bytes.size() / 2)) > 0);
    file.close();
    SigningWindow real;
    real.window.openPaths({cut});
    QVERIFY(real.settled());
    QProcess verify;
    verify.start(QStringLiteral(SOAKWRIGHT_PROGRAM), {QStringLiteral("verify"), cut});
    QVERIFY(verify.waitForFinished(kLong_ms));
    const QString said = real.part<ErrorBar>()->texts().join(u'\n');
    const QString reason = said.section(QStringLiteral("; "), 0, 0);
    QVERIFY2(reason.endsWith(QStringLiteral("the file is cut off: its end is missing")), qPrintable(said));
    QCOMPARE(QStringLiteral("soakwright: ") + reason,
             QString::fromUtf8(verify.readAllStandardError()).trimmed().section(QStringLiteral("; "), 0, 0));
    QCOMPARE(said.section(QStringLiteral("; "), 1), QStringLiteral("open a report that Soakwright exported"));
    QVERIFY(!real.window.session().open().has_record());
  }

  void without_the_signing_module_the_case_opens_and_the_panel_says_what_is_missing() {
    RealWindow real;
    real.window.openPaths({report_});
    QVERIFY(real.settled());
    auto* checks = real.window.findChild<ReportChecks*>();
    QVERIFY(checks && QTest::qWaitFor([checks] { return !checks->busy(); }, kLong_ms));
    QCOMPARE(checks->summary(), QStringLiteral("The report could not be verified."));
    QVERIFY2(checks->text().contains(QStringLiteral("install the signing module of this build")),
             qPrintable(checks->text()));
    QVERIFY(real.window.session().open().read_only() && real.window.session().report()->verdict);
  }

  void the_file_menu_has_no_letter_twice() {
    SigningWindow real;
    auto* menu = real.part<QMenuBar>()->actions().front()->menu();
    QStringList letters;
    for (const QAction* action : menu->actions()) {
      const qsizetype mark = action->text().indexOf(u'&');
      if (mark < 0) continue;
      const QString letter = action->text().mid(mark + 1, 1).toLower();
      QVERIFY2(!letters.contains(letter), qPrintable(action->text()));
      letters.append(letter);
    }
    QVERIFY(letters.contains(QStringLiteral("v")) && letters.contains(QStringLiteral("g")));
  }
};

QTEST_MAIN(ReportInTheWindowTest)
#include "report_in_the_window_test.moc"
