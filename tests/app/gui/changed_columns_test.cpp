// SPDX-License-Identifier: GPL-3.0-or-later
// Columns changed on the import settings: each by itself, whatever the log and the job call it.

#include <QComboBox>

#include "app/gui/parts/error_bar.h"
#include "tests/app/gui/dialog_answers.h"
#include "tests/app/gui/import_settings_steps.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class ChangedColumnsTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;

 private slots:
  void an_emf_column_without_a_cold_junction_gets_one_there() {
    const QString emf = made::write(
        files_.path(), QStringLiteral("emf.csv"),
        QStringLiteral("Time,TC1 (°C),TC2 (mV)\n06:00:00,20,0.1\n06:01:00,21,0.2\n06:02:00,22,0.3\n"));
    RealWindow real;
    QVERIFY(real.open({emf}));
    QCOMPARE(real.window.session().open().analysis.record->channels.size(), std::size_t{1});
    real.part<ImportSettingsPane>()
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

  void a_column_is_changed_by_itself_whatever_others_are_called() {
    struct Named {
      const char* header;
      int row;  ///< of the second column of readings
    };
    for (const Named& named :
         {Named{"Time,TC1 (°C),TC1 (°C),TC3 (°C)", 1}, Named{"Time,1,2,3", 1}, Named{"Time,3,2,4", 1}}) {
      const QString log =
          made::write(files_.path(), QStringLiteral("named.csv"),
                      QString::fromUtf8(named.header) +
                          QStringLiteral("\n06:00:00,20,30,40\n06:01:00,21,31,41\n06:02:00,22,32,42\n"));
      RealWindow real;
      QVERIFY(real.open({log}));
      QVERIFY2(real.window.session().open().has_record(), named.header);
      chooseIn(real, named.row, ColumnTable::unit, QStringLiteral("F"));
      QVERIFY2(real.part<ImportSettingsPane>()->message().isEmpty(),
               qPrintable(real.part<ImportSettingsPane>()->message()));
      const auto units = [&real] {
        QString all;
        for (const Channel& channel : real.window.session().open().analysis.record->channels)
          all += channel.unit == ChannelUnit::fahrenheit ? u'F' : u'C';
        return all;
      };
      QCOMPARE(units(), QStringLiteral("CFC"));
      answer(giveReason(QStringLiteral("kept for later")));
      chooseIn(real, named.row, ColumnTable::kind, QStringLiteral("spare"));
      QVERIFY(real.window.session().open().analysis.record->channels[1].role == ThermocoupleRole::spare);
      auto* unit = qobject_cast<QComboBox*>(
          real.part<ImportSettingsPane>()->columns()->cellWidget(named.row, ColumnTable::unit));
      take(unit, 0);
      QTRY_COMPARE(units(), QStringLiteral("CCC"));
      QVERIFY(real.settled());
      // The role and its reason.
      QCOMPARE(real.window.session().wanted().size(), std::size_t{2});
    }
  }

  void a_column_apart_that_the_job_lists_by_its_header_is_listed_once() {
    const QString log = made::write(
        files_.path(), QStringLiteral("emf.csv"),
        QStringLiteral("Time,TC1 (°C),TC2 (mV)\n06:00:00,20,0.1\n06:01:00,21,0.2\n06:02:00,22,0.3\n"));
    const QString job =
        made::write(files_.path(), QStringLiteral("emf.toml"),
                    QStringLiteral("soakwright = \"job 1\"\nlog = \"emf.csv\"\n"
                                   "[[thermocouple]]\ncolumn = \"TC2 (mV)\"\ntype = \"N\"\n"));
    RealWindow real;
    QVERIFY(real.open({job}));
    auto* columns = real.part<ImportSettingsPane>()->columns();
    QCOMPARE(qobject_cast<QComboBox*>(columns->cellWidget(1, ColumnTable::type))->currentText(),
             QStringLiteral("N"));
    columns->item(1, ColumnTable::cold_junction)->setText(QStringLiteral("23.0 C"));
    QTRY_COMPARE(real.window.session().wanted().size(), std::size_t{1});
    QVERIFY(real.settled());
    QVERIFY2(real.part<ImportSettingsPane>()->message().isEmpty(),
             qPrintable(real.part<ImportSettingsPane>()->message()));
    QCOMPARE(real.window.session().open().analysis.record->channels.size(), std::size_t{2});
    QCOMPARE(real.window.session().open().analysis.job->thermocouples.size(), std::size_t{1});
  }

  void a_job_that_lists_a_column_twice_is_refused_in_plain_words() {
    made::log(files_.path(), QStringLiteral("d3-n2.csv"), {});
    const QString job =
        made::write(files_.path(), QStringLiteral("twice.toml"),
                    QStringLiteral("soakwright = \"job 1\"\nlog = \"d3-n2.csv\"\n"
                                   "[[thermocouple]]\ncolumn = \"TC2\"\n[[thermocouple]]\ncolumn = \"3\"\n"));
    RealWindow real;
    QVERIFY(real.open({job}));
    QVERIFY(!real.window.session().open().has_record());
    QVERIFY(!real.window.session().refusedLog());
    const QStringList texts = real.part<ErrorBar>()->texts();
    QCOMPARE(texts.size(), 1);
    QVERIFY2(texts[0].endsWith(
                 QStringLiteral("twice.toml:5: column '3' is listed twice; leave one of the entries out")),
             qPrintable(texts[0]));
  }
};

QTEST_MAIN(ChangedColumnsTest)
#include "changed_columns_test.moc"
