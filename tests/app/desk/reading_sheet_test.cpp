// The reading sheet: what was found can be changed there, the log is read again at once, and the changes go
// into the job with its comments left alone.

#include "app/desk/reading_sheet.h"

#include <QComboBox>
#include <QPushButton>

#include "app/desk/list_pane.h"
#include "app/desk/refusal_bar.h"
#include "app/desk/start_page.h"
#include "core/procedure/job_file.h"
#include "tests/app/desk/made_files.h"
#include "tests/app/desk/real_window.h"

using namespace soakwright;
using namespace soakwright::desk;

class ReadingSheetTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString log_, job_, either_;

  static void choose(RealWindow& real, const std::string& key, const char* value) {
    QComboBox* box = real.part<ReadingSheet>()->settings()->box(key);
    const int place = value ? box->findData(QString::fromLatin1(value)) : 0;
    QVERIFY2(place >= 0, value);
    box->setCurrentIndex(place);
    QVERIFY(real.settled());
  }
  static void chooseIn(RealWindow& real, int row, ColumnTable::Part part, const QString& value) {
    auto* box = qobject_cast<QComboBox*>(real.part<ReadingSheet>()->columns()->cellWidget(row, part));
    QVERIFY(box);
    const std::size_t before = real.window.session().wanted().size();
    box->setCurrentIndex(box->findData(value));
    QTRY_VERIFY(real.window.session().wanted().size() > before);
    QVERIFY(real.settled());
  }
  static const Reading& reading(RealWindow& real) {
    return real.window.session().open().analysis.record->reading;
  }
  static QString text_of(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
  }
  static QPushButton* button(RealWindow& real, const QString& text) {
    for (auto* found : real.part<ReadingSheet>()->findChildren<QPushButton*>())
      if (found->text() == text) return found;
    return nullptr;
  }

 private slots:
  void init() {
    log_ = made::log(files_.path(), QStringLiteral("d3-n2.csv"), {});
    made::procedure(files_.path(), QStringLiteral("htp-021.toml"), 140, 100);
    job_ = made::job(files_.path(), QStringLiteral("job.toml"), QStringLiteral("d3-n2.csv"),
                     QStringLiteral("htp-021.toml"));
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
    QVERIFY(reading(real).encoding.by == Setting::By::given);
    QVERIFY(real.window.session().canUndo());
    button(real, QStringLiteral("Undo"))->click();
    QVERIFY(real.settled());
    QVERIFY(reading(real).encoding.by == Setting::By::found);
    QVERIFY(!real.window.session().canUndo());
    QVERIFY(real.window.session().wanted().empty());
  }

  void a_setting_that_the_file_contradicts_leaves_what_was_open_and_says_why() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    const auto before = real.window.session().open().analysis.record;
    choose(real, "delimiter", ";");
    QVERIFY(real.window.session().open().analysis.record == before);
    const QString said = real.part<ReadingSheet>()->message();
    QVERIFY2(said.contains(QStringLiteral("the delimiter ';' was given, but the rows are parted by ','")),
             qPrintable(said));
    button(real, QStringLiteral("Undo"))->click();
    QVERIFY(real.settled());
    QVERIFY(real.part<ReadingSheet>()->message().isEmpty());
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
    for (const Fact& fact : real.window.session().report()->reading)
      facts += QString::fromStdString(fact.name + ": " + fact.text + "\n");
    QVERIFY2(facts.contains(QStringLiteral("Changed by hand: column 3 (TC2): unit F")), qPrintable(facts));
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
    QSignalSpy written(&real.window, &DeskWindow::exported);
    real.window.writeJob(job_);
    QVERIFY(written.wait(30'000));
    QVERIFY(written[0][1].toBool());
    QTRY_VERIFY(real.window.session().wanted().empty());
    QVERIFY(real.settled());
    QString expected = before;
    expected.replace(QStringLiteral("duty = \"control\""), QStringLiteral("duty = \"monitor\""));
    expected += QStringLiteral("\n[reading]\ndecimal = \".\"\n");
    QCOMPARE(text_of(job_), expected);
    QVERIFY(reading(real).decimal.by == Setting::By::given);
    QVERIFY(real.window.session().open().analysis.verdicts);
  }

  void a_refused_log_is_settled_on_the_sheet_and_a_new_job_keeps_it() {
    RealWindow real;
    QVERIFY(real.open({either_}));
    QVERIFY(!real.window.session().open().has_record());
    auto* sheet = real.part<ReadingSheet>();
    QVERIFY(sheet->isVisible());
    QVERIFY(sheet->message().contains(QStringLiteral("can be read as dmy or mdy")));
    QCOMPARE(sheet->lines().lines().content().lines[0].cells[2], QStringLiteral("Time,TC1 (°C)"));
    choose(real, "dates", "dmy");
    QVERIFY(real.window.session().open().has_record());
    QVERIFY(real.part<ReadingSheet>()->message().isEmpty());
    QCOMPARE(QString::fromStdString(real.window.session().open().analysis.record->start->iso()),
             QStringLiteral("2031-04-02T06:00:00"));
    const QString path = real.folder.filePath(QStringLiteral("new.toml"));
    QSignalSpy written(&real.window, &DeskWindow::exported);
    real.window.writeJob(path);
    QVERIFY(written.wait(30'000));
    QTRY_VERIFY(real.window.session().open().files.job == path);
    const auto job = read_job(path.toStdString());
    QVERIFY(job.ok());
    QVERIFY(job.value().reading.dates == DateOrder::dmy);
    QCOMPARE(QDir::cleanPath(real.folder.filePath(QString::fromStdString(*job.value().log))),
             QDir::cleanPath(either_));
  }

  void a_refused_log_can_be_left_alone_again() {
    RealWindow real;
    QVERIFY(real.open({either_}));
    button(real, QStringLiteral("Leave this log"))->click();
    QVERIFY(!real.window.session().refusedLog());
    QVERIFY(real.part<StartPage>()->isVisible());
  }

  void a_log_refused_beside_an_open_one_leaves_that_open() {
    RealWindow real;
    QVERIFY(real.open({log_}));
    const auto before = real.window.session().open().analysis.record;
    QVERIFY(real.open({either_}));
    QVERIFY(real.window.session().open().analysis.record == before);
    QVERIFY(real.part<RefusalBar>()->isVisible());
    QVERIFY(real.part<ReadingSheet>()->message().contains(QStringLiteral("either.csv:2")));
    real.window.session().dropRefused();
    QVERIFY(real.part<ReadingSheet>()->message().isEmpty());
  }

  void an_emf_column_without_a_cold_junction_gets_one_there() {
    const QString emf = made::write(
        files_.path(), QStringLiteral("emf.csv"),
        QStringLiteral("Time,TC1 (°C),TC2 (mV)\n06:00:00,20,0.1\n06:01:00,21,0.2\n06:02:00,22,0.3\n"));
    RealWindow real;
    QVERIFY(real.open({emf}));
    QCOMPARE(real.window.session().open().analysis.record->channels.size(), std::size_t{1});
    real.part<ReadingSheet>()
        ->columns()
        ->item(1, ColumnTable::cold_junction)
        ->setText(QStringLiteral("23.0 C"));
    QTRY_COMPARE(real.window.session().wanted().size(), std::size_t{1});
    QVERIFY(real.settled());
    QCOMPARE(real.window.session().open().analysis.record->channels.size(), std::size_t{2});
    chooseIn(real, 1, ColumnTable::type, QStringLiteral("N"));
    const auto& job = *real.window.session().open().analysis.job;
    QVERIFY(job.thermocouples[0].type == ThermocoupleType::N);
  }

  void what_is_not_written_is_there_again_after_a_crash() {
    QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("desk.ini"));
    {
      DeskMemory memory(file);
      DeskWindow window(memory);
      window.session().openFiles({either_});
      QVERIFY(QTest::qWaitFor([&] { return !window.session().busy(); }, 60'000));
      window.session().change({std::nullopt, "dates", "mdy"});
      QVERIFY(QTest::qWaitFor([&] { return !window.session().busy(); }, 60'000));
      DeskMemory meanwhile(file);
      QCOMPARE(meanwhile.changes(window.session().logSha()).size(), std::size_t{1});
    }
    DeskMemory memory(file);
    DeskWindow window(memory);
    window.session().openFiles({either_});
    QTRY_VERIFY(window.session().open().has_record());
    QVERIFY(window.session().wanted() == (std::vector<JobChange>{{std::nullopt, "dates", "mdy"}}));
  }
};

QTEST_MAIN(ReadingSheetTest)
#include "reading_sheet_test.moc"
