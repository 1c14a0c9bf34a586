// SPDX-License-Identifier: GPL-3.0-or-later
// The import settings' date of the first row and start of elapsed time: typed, refused where they are no
// date, taken back, and saved in the job as TOML's own dates (TOML 1.0, local date and local date-time).

#include <QLineEdit>

#include "core/procedure/job/job_file.h"
#include "tests/app/gui/import_settings_steps.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class DateAndStartTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString of_day_, elapsed_;

  static QLineEdit* field(RealWindow& real, const std::string& key) {
    return real.part<ImportSettingsPane>()->settings()->field(key);
  }
  static bool type(RealWindow& real, const std::string& key, const QString& text) {
    QLineEdit* line = field(real, key);
    line->setFocus();
    line->selectAll();
    if (text.isEmpty())
      QTest::keyClick(line, Qt::Key_Delete);
    else
      QTest::keyClicks(line, text);
    QTest::keyClick(line, Qt::Key_Return);
    return real.settled();
  }
  bool open(RealWindow& real, const QString& log) {
    if (!real.open({log})) return false;
    real.action(QStringLiteral("Import settings"))->trigger();
    return real.window.session().open().has_record();
  }
  static QString first_moment(RealWindow& real) {
    const auto local = real.window.session().open().analysis.record->local_time(0.0);
    return local ? QString::fromStdString(local->iso()) : QString();
  }
  static QString text_of(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
  }

 private slots:
  void initTestCase() {
    of_day_ = made::write(
        files_.path(), QStringLiteral("day.csv"),
        QStringLiteral("Time,TC1 (°C),TC2 (°C)\n06:00:00,20,21\n06:01:00,21,22\n06:02:00,22,23\n"));
    elapsed_ =
        made::write(files_.path(), QStringLiteral("elapsed.csv"),
                    QStringLiteral("Elapsed (min),TC1 (°C),TC2 (°C)\n0,20,21\n1,21,22\n2,22,23\n3,23,24\n"));
  }

  void a_date_puts_a_time_of_day_on_a_day_and_undo_takes_it_back() {
    RealWindow real;
    QVERIFY(open(real, of_day_));
    QVERIFY(field(real, "date")->isEnabled());
    QVERIFY(!field(real, "start")->isEnabled());
    QVERIFY(type(real, "date", QStringLiteral("2031-04-02")));
    QCOMPARE(first_moment(real), QStringLiteral("2031-04-02T06:00:00"));
    QVERIFY(field(real, "date")->font().bold());
    real.window.session().edits().undo();
    QVERIFY(real.settled());
    QVERIFY(first_moment(real) != QStringLiteral("2031-04-02T06:00:00"));
    QVERIFY(real.window.session().wanted().empty());
  }

  void a_start_puts_elapsed_time_on_the_clock() {
    RealWindow real;
    QVERIFY(open(real, elapsed_));
    QVERIFY(field(real, "start")->isEnabled());
    QVERIFY(!field(real, "date")->isEnabled());
    QVERIFY(type(real, "start", QStringLiteral("2031-04-02 06:30:00")));
    QCOMPARE(first_moment(real), QStringLiteral("2031-04-02T06:30:00"));
    QCOMPARE(field(real, "start")->text(), QStringLiteral("2031-04-02 06:30:00"));
    // Empty takes it back.
    QVERIFY(type(real, "start", {}));
    QVERIFY(real.window.session().wanted().empty());
    QVERIFY(!field(real, "start")->font().bold());
  }

  void what_is_no_date_stays_marked_and_changes_nothing() {
    RealWindow real;
    QVERIFY(open(real, of_day_));
    const auto before = real.window.session().open().analysis.record;
    for (const QString& wrong : {QStringLiteral("31.4.2"), QStringLiteral("2031-02-30")}) {
      QVERIFY(type(real, "date", wrong));
      QCOMPARE(field(real, "date")->text(), wrong);
      QVERIFY2(field(real, "date")->toolTip().contains(QStringLiteral("is not a date")),
               qPrintable(field(real, "date")->toolTip()));
      QVERIFY(field(real, "date")->palette() != QLineEdit().palette());
      QVERIFY(real.window.session().open().analysis.record == before);
      QVERIFY(real.window.session().wanted().empty());
    }
    QVERIFY(type(real, "date", QStringLiteral("2031-02-28")));
    QCOMPARE(first_moment(real), QStringLiteral("2031-02-28T06:00:00"));
  }

  void both_are_saved_in_the_job_as_dates_and_shown_again() {
    RealWindow real;
    QVERIFY(open(real, of_day_));
    QVERIFY(type(real, "date", QStringLiteral("2031-04-02")));
    const QString job = files_.filePath(QStringLiteral("day.toml"));
    writeInto(real, job);
    QVERIFY2(text_of(job).contains(QStringLiteral("\ndate = 2031-04-02\n")), qPrintable(text_of(job)));
    QCOMPARE(field(real, "date")->text(), QStringLiteral("2031-04-02"));

    RealWindow other;
    QVERIFY(open(other, elapsed_));
    QVERIFY(type(other, "start", QStringLiteral("2031-04-02 06:30:00")));
    const QString second = files_.filePath(QStringLiteral("elapsed.toml"));
    writeInto(other, second);
    QVERIFY2(text_of(second).contains(QStringLiteral("\nstart = 2031-04-02T06:30:00\n")),
             qPrintable(text_of(second)));
    RealWindow again;
    QVERIFY(again.open({second}));
    QCOMPARE(field(again, "start")->text(), QStringLiteral("2031-04-02 06:30:00"));
    QCOMPARE(first_moment(again), QStringLiteral("2031-04-02T06:30:00"));
  }
};

QTEST_MAIN(DateAndStartTest)
#include "date_and_start_test.moc"
