// SPDX-License-Identifier: GPL-3.0-or-later
// Files given, files changed, files overwritten: nothing of it in silence.

#include <QFileDialog>
#include <QInputDialog>
#include <QPrinter>
#include <QPushButton>

#include "app/gui/background/report_print.h"
#include "app/gui/parts/error_bar.h"
#include "app/gui/parts/message_strip.h"
#include "app/gui/parts/summary_bar.h"
#include "tests/app/gui/dialog_answers.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class FilesFromOutsideTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString log_, other_log_, procedure_;

  static MessageStrip* stale(RealWindow& real) {
    return real.part<MessageStrip>(QStringLiteral("Files changed on disk"));
  }

 private slots:
  void init() {
    log_ = made::log(files_.path(), QStringLiteral("d3-n2.csv"), {});
    made::Run other;
    other.channels = 6;
    other_log_ = made::log(files_.path(), QStringLiteral("d3-n3.csv"), other);
    procedure_ = made::procedure(files_.path(), QStringLiteral("htp-021.toml"), 140, 100);
  }

  void of_several_logs_the_user_is_asked_which() {
    RealWindow real;
    const QString gone = files_.filePath(QStringLiteral("nosuch.csv"));
    bool seen = false;
    answer([&](QWidget* dialog) {
      auto* which = qobject_cast<QInputDialog*>(dialog);
      if (!which) return false;
      const QStringList names = which->comboBoxItems();
      seen = names.size() == 3 && names[2].contains(QStringLiteral("not found"));
      which->setTextValue(names[1]);
      which->accept();
      return true;
    });
    real.window.openPaths({log_, other_log_, gone, procedure_});
    QVERIFY(real.settled());
    QVERIFY(seen);
    QCOMPARE(real.window.session().open().log_path, other_log_);
    QVERIFY(real.window.session().open().analysis.verdicts);
  }

  void several_logs_and_no_answer_open_nothing() {
    RealWindow real;
    answer([](QWidget* dialog) {
      auto* which = qobject_cast<QInputDialog*>(dialog);
      if (which) which->reject();
      return which != nullptr;
    });
    real.window.openPaths({log_, other_log_});
    QVERIFY(real.settled());
    QVERIFY(!real.window.session().open().has_record());
  }

  void a_session_refuses_several_of_a_kind_in_words() {
    Session session;
    QSignalSpy refused(&session, &Session::refused);
    session.openFiles({log_, other_log_});
    QCOMPARE(refused.count(), 1);
    QVERIFY(refused[0][0].toStringList().first().contains(QStringLiteral("d3-n3.csv")));
    QVERIFY(!session.busy());
  }

  void a_procedure_changed_on_disk_makes_the_result_out_of_date_until_it_is_read() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    QVERIFY(!stale(real)->isVisible());
    QTest::qWait(30);
    made::procedure(files_.path(), QStringLiteral("htp-021.toml"), 90, 1000);
    QTRY_VERIFY_WITH_TIMEOUT(stale(real)->isVisible(), 10'000);
    QVERIFY(stale(real)->text().contains(QStringLiteral("htp-021.toml")));
    QVERIFY2(real.part<SummaryBar>()->word().contains(QStringLiteral("out of date")),
             qPrintable(real.part<SummaryBar>()->word()));
    QVERIFY(real.window.windowTitle().contains(QStringLiteral("out of date")));
    stale(real)->button(0)->click();
    QVERIFY(real.settled());
    QTRY_VERIFY(!stale(real)->isVisible());
    QCOMPARE(real.part<SummaryBar>()->word(), QStringLiteral("Not met"));
  }

  void a_log_changed_on_disk_stays_out_of_date_when_the_procedure_is_edited() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    QTest::qWait(30);
    QFile log(log_);
    QVERIFY(log.open(QIODevice::Append));
    log.write("2031-04-03 06:00:00,20.0,20.0,20.0,20.0\n");
    log.close();
    QTRY_VERIFY_WITH_TIMEOUT(stale(real)->isVisible(), 10'000);
    QString text = QString::fromStdString(real.window.session().procedureText());
    real.window.session().changeProcedure(
        text.replace(QStringLiteral("140"), QStringLiteral("150")).toStdString(), QStringLiteral("rate"));
    QVERIFY(real.settled());
    QVERIFY(real.window.session().draft());
    QTest::qWait(100);
    QVERIFY(stale(real)->isVisible());
  }

  void it_stays_out_of_date_while_the_changed_file_cannot_be_read() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    made::write(files_.path(), QStringLiteral("htp-021.toml"),
                QStringLiteral("soakwright = \"procedure 1\"\n"));
    QTRY_VERIFY_WITH_TIMEOUT(stale(real)->isVisible(), 10'000);
    real.action(QStringLiteral("Reload"))->trigger();
    QVERIFY(real.settled());
    QVERIFY(real.part<ErrorBar>()->isVisible());
    real.part<ErrorBar>()->putAway();
    QVERIFY(stale(real)->isVisible());
    QVERIFY(real.part<SummaryBar>()->word().contains(QStringLiteral("out of date")));
  }

  void a_log_that_is_gone_is_said_to_be_gone() {
    RealWindow real;
    QVERIFY(real.open({other_log_}));
    QVERIFY(QFile::remove(other_log_));
    QTRY_VERIFY_WITH_TIMEOUT(stale(real)->isVisible(), 10'000);
    QVERIFY(stale(real)->text().contains(QStringLiteral("no longer there")));
  }

  void a_report_is_printed_as_it_lies_in_the_pdf() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    QPrinter printer;
    const QString path = real.folder.filePath(QStringLiteral("printed.pdf"));
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(path);
    QVERIFY(print_report(real.window.session().open().report, printer).empty());
    QFile file(path);
    QVERIFY(file.open(QIODevice::ReadOnly));
    const QByteArray bytes = file.readAll();
    QCOMPARE(bytes.left(5), QByteArray("%PDF-"));
    QVERIFY(bytes.count("/Type /Page\n") + bytes.count("/Type /Page ") > 2);
    QVERIFY(real.action(QStringLiteral("Print report…"))->shortcut() == QKeySequence(QKeySequence::Print));
  }

  void export_asks_before_it_replaces_a_file_named_without_its_ending() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    QString suffix;
    bool asks = false;
    answer([&](QWidget* dialog) {
      auto* file = qobject_cast<QFileDialog*>(dialog);
      if (!file) return false;
      suffix = file->defaultSuffix();
      asks = !file->testOption(QFileDialog::DontConfirmOverwrite);
      file->reject();
      return true;
    });
    real.action(QStringLiteral("Export report…"))->trigger();
    QCOMPARE(suffix, QStringLiteral("pdf"));
    QVERIFY(asks);
  }
};

QTEST_MAIN(FilesFromOutsideTest)
#include "files_from_outside_test.moc"
