// SPDX-License-Identifier: GPL-3.0-or-later
// What is open, and what stays open: opening, adding, refusing, cancelling, remembering.

#include "app/gui/session.h"

#include <QCommandLinkButton>
#include <QCryptographicHash>
#include <QtTest>
#include <atomic>
#include <ctime>

#include "app/gui/panes/start_page.h"
#include "app/gui/parts/summary_bar.h"
#include "app/gui/saved_settings.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class SessionTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString log_, other_log_, procedure_, job_;

  /// What this thread has spent of a processor's time.
  static double thread_seconds() {
    timespec time{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
    return static_cast<double>(time.tv_sec) + 1e-9 * static_cast<double>(time.tv_nsec);
  }
  static bool settled(Session& session) {
    return QTest::qWaitFor([&session] { return !session.busy(); }, 60'000);
  }

 private slots:
  void initTestCase() {
    log_ = made::log(files_.path(), QStringLiteral("d3-n2.csv"), {});
    made::Run other;
    other.channels = 6;
    other_log_ = made::log(files_.path(), QStringLiteral("d3-n3.csv"), other);
    procedure_ = made::procedure(files_.path(), QStringLiteral("htp-021.toml"), 140, 100);
    job_ = made::job(files_.path(), QStringLiteral("d3-n2.toml"), QStringLiteral("d3-n2.csv"),
                     QStringLiteral("htp-021.toml"));
  }

  void tells_a_file_by_what_it_says() {
    QVERIFY(file_kind(log_) == FileKind::log);
    QVERIFY(file_kind(procedure_) == FileKind::procedure);
    QVERIFY(file_kind(job_) == FileKind::job);
    QVERIFY(file_kind(made::write(files_.path(), QStringLiteral("r.toml"),
                                  QStringLiteral("# \nsoakwright = 'review 1'\n"))) == FileKind::review);
    QVERIFY(file_kind(files_.filePath(QStringLiteral("gone.toml"))) == FileKind::procedure);
  }

  void puts_files_together_so_that_a_job_keeps_to_its_log() {
    Job names_log;
    names_log.log = "a.csv";
    Job names_nothing;
    OpenFiles job_open;
    job_open.procedure = QStringLiteral("p");
    job_open.job = QStringLiteral("j");
    OpenFiles log_named;
    log_named.log = QStringLiteral("b.csv");
    QVERIFY(files_together(job_open, log_named, &names_log).job.isEmpty());
    QCOMPARE(files_together(job_open, log_named, &names_nothing).job, QStringLiteral("j"));
    QCOMPARE(files_together(job_open, log_named, &names_log).procedure, QStringLiteral("p"));
    OpenFiles log_open;
    log_open.log = QStringLiteral("b.csv");
    OpenFiles job_named;
    job_named.job = QStringLiteral("j");
    QVERIFY(files_together(log_open, job_named, &names_log).log.isEmpty());
    QCOMPARE(files_together(log_open, job_named, &names_nothing).log, QStringLiteral("b.csv"));
  }

  void opens_together_what_is_named_while_reading() {
    Session session;
    session.openFiles({log_});
    session.openFiles({procedure_});
    QVERIFY(settled(session));
    QVERIFY(session.open().has_record());
    QVERIFY(session.open().analysis.verdicts);
  }

  void a_procedure_alone_waits_for_a_log() {
    Session session;
    session.openFiles({procedure_});
    QVERIFY(settled(session));
    QVERIFY(!session.open().has_record());
    QVERIFY(session.open().analysis.procedure);
    session.openFiles({log_});
    QVERIFY(settled(session));
    QVERIFY(session.open().analysis.verdicts);
  }

  void cancelling_leaves_what_was_open() {
    Session session;
    session.openFiles({log_});
    QVERIFY(settled(session));
    const auto record = session.open().analysis.record;
    QSignalSpy changed(&session, &Session::caseChanged);
    session.openFiles({other_log_});
    session.cancel();
    QVERIFY(!session.busy());
    QTest::qWait(300);
    QVERIFY(session.open().analysis.record == record);
    QCOMPARE(changed.count(), 0);
  }

  void a_refusal_leaves_what_was_open() {
    Session session;
    session.openFiles({log_});
    QVERIFY(settled(session));
    const auto record = session.open().analysis.record;
    QSignalSpy refused(&session, &Session::refused);
    const QString nothing = made::write(files_.path(), QStringLiteral("empty.csv"), {});
    session.openFiles({nothing});
    QVERIFY(settled(session));
    QCOMPARE(refused.count(), 1);
    Request request;
    request.log = nothing.toStdString();
    const auto expected = inspect(request);
    QVERIFY(!expected.ok());
    QCOMPARE(refused[0][0].toStringList().first(),
             QString::fromStdString(expected.problems().front().text()));
    QVERIFY(session.open().analysis.record == record);
  }

  void a_large_refused_log_is_hashed_off_the_windows_thread() {
    QString lines;
    for (int line = 0; line < 4000; ++line) lines += QStringLiteral("no reading here, nor here\n");
    const QString large = made::write(files_.path(), QStringLiteral("large.csv"), lines);
    QVERIFY(QFile::resize(large, 64 << 20));
    const double before_own = thread_seconds();
    QFile file(large);
    QVERIFY(file.open(QIODevice::ReadOnly));
    QCryptographicHash hash(QCryptographicHash::Sha256);
    QVERIFY(hash.addData(&file));
    const double hashing = thread_seconds() - before_own;

    Session session;
    QSignalSpy refused(&session, &Session::logRefused);
    const double before = thread_seconds();
    session.openFiles({large});
    QVERIFY(settled(session));
    const double spent = thread_seconds() - before;
    QCOMPARE(refused.count(), 1);
    QCOMPARE(session.refusedLog()->sha256, QString::fromLatin1(hash.result().toHex()));
    QVERIFY2(spent < 0.5 * hashing, qPrintable(QStringLiteral("%1 s of %2 s").arg(spent).arg(hashing)));
  }

  void cancelling_while_a_refused_log_is_hashed_leaves_what_was_open() {
    const std::atomic<bool> cancelled{true};
    const QString nothing = made::write(files_.path(), QStringLiteral("text.csv"), QStringLiteral("none\n"));
    const Problems problems{{ProblemKind::bad_input, nothing.toStdString(), 1, "no row", "none"}};
    QVERIFY(refused_log(problems, {}, {}, {}));
    QVERIFY(!refused_log(problems, {}, {}, {{}, &cancelled}));
  }

  void a_job_closed_leaves_its_log_and_procedure() {
    Session session;
    session.openFiles({job_});
    QVERIFY(settled(session));
    QVERIFY(session.open().analysis.job);
    session.closeJob();
    QVERIFY(settled(session));
    QVERIFY(!session.open().analysis.job);
    QCOMPARE(session.open().log_path, log_);
    QVERIFY(session.open().analysis.verdicts);
  }

  void hidden_channels_stay_hidden_when_the_same_log_is_read_again() {
    Session session;
    session.openFiles({log_, procedure_});
    QVERIFY(settled(session));
    session.setVisible(2, false);
    session.reload();
    QVERIFY(settled(session));
    QVERIFY(!session.visible(2));
    session.openFiles({other_log_});
    QVERIFY(settled(session));
    QVERIFY(session.visible(2));
  }

  void a_chosen_requirement_stays_chosen_after_evaluation_again() {
    Session session;
    session.openFiles({log_, procedure_});
    QVERIFY(settled(session));
    session.select({Selection::Kind::requirement, 2});
    const std::string id = session.report()->requirements[2].id;
    session.reload();
    QVERIFY(settled(session));
    QVERIFY(session.selection().kind == Selection::Kind::requirement);
    QCOMPARE(session.report()->requirements[session.selection().index].id, id);
  }

  void the_log_is_read_again_with_the_order_of_dates_that_is_chosen() {
    Session session;
    const QString either = made::write(
        files_.path(), QStringLiteral("either.csv"),
        QStringLiteral("Time,TC1\n02/04/2031 06:00,20\n02/04/2031 06:01,21\n02/04/2031 06:02,22\n"));
    QSignalSpy refused(&session, &Session::refused);
    session.openFiles({either});
    QVERIFY(settled(session));
    QCOMPARE(refused.count(), 1);
    QVERIFY(!session.open().has_record());
  }

  void the_window_remembers_what_was_open_and_how_it_was_laid_out() {
    QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("gui.ini"));
    {
      SavedSettings memory(file);
      MainWindow window(memory);
      window.resize(1100, 700);
      window.show();
      window.session().openFiles({log_, procedure_});
      QVERIFY(settled(window.session()));
      // Nothing is closed properly here: what counts was written when it happened.
      SavedSettings meanwhile(file);
      QCOMPARE(meanwhile.last().size(), 2);
      QVERIFY(meanwhile.recent().contains(log_));
      window.close();
    }
    SavedSettings memory(file);
    MainWindow window(memory);
    window.show();
    QCOMPARE(window.size(), QSize(1100, 700));
    auto* start = window.findChild<StartPage*>();
    QCOMPARE(start->last().size(), 2);
    emit start->filesWanted(start->last());
    QVERIFY(settled(window.session()));
    QVERIFY(window.session().open().analysis.verdicts);
  }

  void the_start_page_shows_its_links_whole() {
    RealWindow real;
    real.window.resize(1280, 800);
    QTest::qWait(50);
    int shown = 0;
    for (const auto* link : real.part<StartPage>()->findChildren<QCommandLinkButton*>()) {
      if (!link->isVisible()) continue;
      ++shown;
      QVERIFY2(link->height() >= link->heightForWidth(link->width()), qPrintable(link->text()));
    }
    QCOMPARE(shown, 3);
  }

  void a_failed_opening_with_nothing_open_says_so_and_the_window_stays_empty() {
    RealWindow real;
    const QString gone = files_.filePath(QStringLiteral("gone.csv"));
    QVERIFY(real.open({gone}));
    QVERIFY(!real.window.session().open().has_record());
    QVERIFY(real.part<SummaryBar>()->word().isEmpty());
  }
};

QTEST_MAIN(SessionTest)
#include "session_test.moc"
