// SPDX-License-Identifier: GPL-3.0-or-later
// The import settings: what was found can be changed there, the log is read again at once, and the changes go
// into the job with its comments left alone.

#include "app/gui/panes/import_settings_pane.h"

#include <QPushButton>

#include "app/gui/panes/list_pane.h"
#include "app/gui/panes/start_page.h"
#include "app/gui/parts/error_bar.h"
#include "core/procedure/job/job_file.h"
#include "tests/app/gui/import_settings_steps.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class ImportSettingsPaneTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString log_, job_, either_;

  static QString text_of(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
  }
  static QPushButton* button(RealWindow& real, const QString& text) {
    for (auto* found : real.part<ImportSettingsPane>()->findChildren<QPushButton*>())
      if (found->text() == text) return found;
    return nullptr;
  }

 private slots:
  void init() {
    const made::Case files = made::drum_case(files_.path());
    log_ = files.log;
    job_ = files.job;
    either_ = made::write(
        files_.path(), QStringLiteral("either.csv"),
        QStringLiteral("Time,TC1 (°C)\n02/04/2031 06:00,20\n02/04/2031 06:01,21\n02/04/2031 06:02,22\n"));
  }

  void a_changed_setting_reads_the_log_again_and_undo_takes_it_back() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    const auto before = real.window.session().open().analysis.record;
    choose(real, "encoding", "utf-8");
    QVERIFY(real.window.session().open().analysis.record != before);
    QVERIFY(reading(real).encoding.by == SettingBy::given);
    QVERIFY(real.window.session().edits().canUndo());
    button(real, QStringLiteral("Undo"))->click();
    QVERIFY(real.settled());
    QVERIFY(reading(real).encoding.by == SettingBy::found);
    QVERIFY(!real.window.session().edits().canUndo());
    QVERIFY(real.window.session().wanted().empty());
  }

  void a_setting_that_the_file_contradicts_leaves_what_was_open_and_says_why() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    const auto before = real.window.session().open().analysis.record;
    choose(real, "delimiter", ";");
    QVERIFY(real.window.session().open().analysis.record == before);
    const QString said = real.part<ImportSettingsPane>()->message();
    QVERIFY2(said.contains(QStringLiteral("the delimiter ';' was given, but the rows are parted by ','")),
             qPrintable(said));
    button(real, QStringLiteral("Undo"))->click();
    QVERIFY(real.settled());
    QVERIFY(real.part<ImportSettingsPane>()->message().isEmpty());
  }

  void a_changed_unit_is_in_the_record_and_in_the_report() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    const double before = *real.window.session().open().analysis.record->channels[1].max_c;
    chooseIn(real, 1, ColumnTable::unit, QStringLiteral("F"));
    const Record& record = *real.window.session().open().analysis.record;
    QVERIFY(record.channels[1].unit == ChannelUnit::fahrenheit);
    QVERIFY(std::abs(*record.channels[1].max_c - (before - 32.0) / 1.8) < 0.01);
    QString facts;
    for (const LabelledText& fact : real.window.session().report()->reading)
      facts += QString::fromStdString(fact.name + ": " + fact.text + "\n");
    QVERIFY2(facts.contains(QStringLiteral("Manual changes: column 3 (TC2): unit F")), qPrintable(facts));
  }

  void changes_go_into_the_job_and_its_comments_stay() {
    const QString comment = QStringLiteral("# agreed with Ines Okafor\n");
    made::write(files_.path(), QStringLiteral("job.toml"), comment + text_of(job_));
    const QString before = text_of(job_);
    RealWindow real;
    QVERIFY(real.open({job_}));
    chooseIn(real, 0, ColumnTable::kind, QStringLiteral("monitor"));
    choose(real, "decimal", ".");
    QCOMPARE(text_of(job_), before);
    writeInto(real, job_);
    QString expected = before;
    expected.replace(QStringLiteral("role = \"control\""), QStringLiteral("role = \"monitor\""));
    expected += QStringLiteral("\n[import]\ndecimal = \".\"\n");
    QCOMPARE(text_of(job_), expected);
    QVERIFY(reading(real).decimal.by == SettingBy::given);
    QVERIFY(real.window.session().open().analysis.verdicts);
  }

  void a_refused_log_is_settled_on_the_sheet_and_a_new_job_keeps_it() {
    RealWindow real;
    QVERIFY(real.open({either_}));
    QVERIFY(!real.window.session().open().has_record());
    auto* sheet = real.part<ImportSettingsPane>();
    QVERIFY(sheet->isVisible());
    QVERIFY(sheet->message().contains(QStringLiteral("can be read as dmy or mdy")));
    QCOMPARE(sheet->lines().lines().content().lines[0].cells[2], QStringLiteral("Time,TC1 (°C)"));
    choose(real, "dates", "dmy");
    QVERIFY(real.window.session().open().has_record());
    QVERIFY(real.part<ImportSettingsPane>()->message().isEmpty());
    QCOMPARE(QString::fromStdString(real.window.session().open().analysis.record->local_time(0.0)->iso()),
             QStringLiteral("2031-04-02T06:00:00"));
    const QString path = real.folder.filePath(QStringLiteral("new.toml"));
    writeInto(real, path);
    QCOMPARE(real.window.session().open().files.job, path);
    const auto job = read_job(path.toStdString());
    QVERIFY(job.ok());
    QVERIFY(job.value().reading.dates == DateOrder::dmy);
    QCOMPARE(QDir::cleanPath(real.folder.filePath(QString::fromStdString(*job.value().log))),
             QDir::cleanPath(either_));
  }

  void a_refused_log_that_a_job_names_is_settled_and_written_into_that_job() {
    made::job(files_.path(), QStringLiteral("job.toml"), QStringLiteral("either.csv"),
              QStringLiteral("htp-021.toml"));
    QString before = text_of(job_);
    before.truncate(before.indexOf(QStringLiteral("[[thermocouple]]\ncolumn = \"TC2\"")));
    made::write(files_.path(), QStringLiteral("job.toml"), before);
    RealWindow real;
    QVERIFY(real.open({job_}));
    QVERIFY(real.window.session().refusedLog());
    QCOMPARE(QDir::cleanPath(real.window.session().refusedLog()->path), either_);
    QVERIFY(real.part<ImportSettingsPane>()->message().contains(QStringLiteral("can be read as dmy or mdy")));
    choose(real, "dates", "dmy");
    const OpenCase& open = real.window.session().open();
    QVERIFY2(open.has_record(), qPrintable(real.part<ImportSettingsPane>()->message()));
    QCOMPARE(open.files.job, job_);
    QVERIFY(open.analysis.verdicts);
    QCOMPARE(text_of(job_), before);
    writeInto(real, job_);
    QCOMPARE(text_of(job_), before + QStringLiteral("\n[import]\ndates = \"dmy\"\n"));
    QVERIFY(reading(real).dates.by == SettingBy::given);
  }

  void what_a_job_gives_wrongly_for_a_refused_log_can_be_taken_back() {
    const QString job = made::write(
        files_.path(), QStringLiteral("wrong.toml"),
        QStringLiteral("soakwright = \"job 1\"\nlog = \"d3-n2.csv\"\n[import]\ndelimiter = \";\"\n"));
    RealWindow real;
    QVERIFY(real.open({job}));
    QVERIFY(real.window.session().refusedLog());
    const QComboBox* box = real.part<ImportSettingsPane>()->settings()->box("delimiter");
    QCOMPARE(box->currentData().toString(), QStringLiteral(";"));
    choose(real, "delimiter", nullptr);
    QVERIFY2(real.window.session().open().has_record(),
             qPrintable(real.part<ImportSettingsPane>()->message()));
    QVERIFY(reading(real).delimiter.by == SettingBy::found);
    QCOMPARE(box->currentIndex(), 0);
  }

  void a_refused_log_offers_every_column_of_its_first_lines_as_the_time() {
    const QString wide = made::write(
        files_.path(), QStringLiteral("wide.csv"),
        QStringLiteral("A,B,C,D,E,F,G,H,I,J,Clock\n") +
            QStringLiteral("5,5,5,5,5,5,5,5,5,5,0\n5,5,5,5,5,5,5,5,5,5,10\n5,5,5,5,5,5,5,5,5,5,20\n"));
    RealWindow real;
    QVERIFY(real.open({wide}));
    QVERIFY(real.window.session().refusedLog());
    const QComboBox* box = real.part<ImportSettingsPane>()->settings()->box("time_column");
    QCOMPARE(box->count(), 12);
    QCOMPARE(box->itemText(1), QStringLiteral("1: A"));
    QCOMPARE(box->itemText(11), QStringLiteral("11: Clock"));
    choose(real, "header_line", "0");
    QCOMPARE(box->itemText(11), QStringLiteral("Column 11"));
    choose(real, "header_line", nullptr);
    choose(real, "time_column", "11");
    choose(real, "time", "elapsed s");
    QVERIFY2(real.window.session().open().has_record(),
             qPrintable(real.part<ImportSettingsPane>()->message()));
    QCOMPARE(real.window.session().open().analysis.record->duration_s(), 20.0);
  }

  void nothing_is_said_of_a_record_where_the_log_was_refused() {
    RealWindow real;
    QVERIFY(real.open({either_}));
    int lists = 0;
    for (const ListPane* list : real.window.findChildren<ListPane*>()) {
      if (list == &real.part<ImportSettingsPane>()->lines()) continue;
      ++lists;
      QCOMPARE(list->lines().content().when_empty, QStringLiteral("No record. Open a log (Ctrl+O)."));
    }
    QCOMPARE(lists, 7);
  }

  void a_hash_that_has_no_room_shows_that_it_is_cut() {
    RealWindow real;
    QVERIFY(real.open({either_}));
    const auto* sheet = real.part<ImportSettingsPane>();
    const QString sha = real.window.session().logSha();
    QCOMPARE(sha.size(), 64);
    QVERIFY2(sheet->fileLine().endsWith(sha), qPrintable(sheet->fileLine()));
    real.window.resize(600, 600);
    QTRY_VERIFY2(sheet->fileLine().endsWith(u'…'), qPrintable(sheet->fileLine()));
    real.window.resize(1280, 800);
    QTRY_VERIFY(sheet->fileLine().endsWith(sha));
  }

  void a_refused_log_can_be_left_alone_again() {
    RealWindow real;
    QVERIFY(real.open({either_}));
    button(real, QStringLiteral("Discard"))->click();
    QVERIFY(!real.window.session().refusedLog());
    QVERIFY(real.part<StartPage>()->isVisible());
  }

  void a_log_refused_beside_an_open_one_leaves_that_open() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    const auto before = real.window.session().open().analysis.record;
    QVERIFY(real.open({either_}));
    QVERIFY(real.window.session().open().analysis.record == before);
    QVERIFY(real.part<ErrorBar>()->isVisible());
    QVERIFY(real.part<ImportSettingsPane>()->message().contains(QStringLiteral("either.csv:2")));
    real.window.session().dropRefused();
    QVERIFY(real.part<ImportSettingsPane>()->message().isEmpty());
  }
};

QTEST_MAIN(ImportSettingsPaneTest)
#include "import_settings_pane_test.moc"
