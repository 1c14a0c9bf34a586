// SPDX-License-Identifier: GPL-3.0-or-later
// The job edited in the window: fields and text are one file, its comments stay, what is wrong is said beside
// the field, and every change can be undone.

#include "app/gui/panes/job_pane.h"

#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>

#include "app/gui/parts/summary_bar.h"
#include "tests/app/gui/import_settings_steps.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class JobPaneTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString job_;

  static QString text_of(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
  }
  static bool type(RealWindow& real, const std::string& table, const std::string& key, const QString& text) {
    QLineEdit* line = real.part<JobPane>()->field(table, key);
    line->setText(text);
    QTest::keyClick(line, Qt::Key_Return);
    return real.settled();
  }

 private slots:
  void init() {
    made::log(files_.path(), QStringLiteral("d3-n2.csv"), {});
    made::procedure(files_.path(), QStringLiteral("htp-021.toml"), 140, 100);
    job_ = made::job(files_.path(), QStringLiteral("job.toml"), QStringLiteral("d3-n2.csv"),
                     QStringLiteral("htp-021.toml"));
    made::write(files_.path(), QStringLiteral("job.toml"), QStringLiteral("# kept\n") + text_of(job_));
  }

  void a_field_changes_its_line_and_no_other() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    real.action(QStringLiteral("Job"))->trigger();
    const QString before = text_of(job_);
    QCOMPARE(real.part<JobPane>()->field("", "client")->text(), QStringLiteral("Saltmarsh Heat & Power"));
    QVERIFY(type(real, "", "client", QStringLiteral("Port Ellery Power")));
    QVERIFY(type(real, "", "report_number", QStringLiteral("R-31-04")));
    QCOMPARE(real.window.session().open().analysis.job->client,
             std::optional<std::string>("Port Ellery Power"));
    QCOMPARE(text_of(job_), before);
    writeInto(real, job_);
    QString expected = before;
    expected.replace(QStringLiteral("Saltmarsh Heat & Power"), QStringLiteral("Port Ellery Power"));
    expected.replace(QStringLiteral("procedure = \"htp-021.toml\"\n"),
                     QStringLiteral("procedure = \"htp-021.toml\"\nreport_number = \"R-31-04\"\n"));
    QCOMPARE(text_of(job_), expected);
  }

  void what_is_wrong_is_said_beside_the_field_and_undone() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    real.action(QStringLiteral("Job"))->trigger();
    QVERIFY(type(real, "", "cycle", QStringLiteral("0")));
    QVERIFY2(real.part<JobPane>()->problemOf("", "cycle").contains(QStringLiteral("`cycle`")),
             qPrintable(real.part<JobPane>()->problemOf("", "cycle")));
    QCOMPARE(real.part<JobPane>()->field("", "cycle")->text(), QStringLiteral("0"));
    real.window.session().edits().undo();
    QVERIFY(real.settled());
    QVERIFY(real.part<JobPane>()->problemOf("", "cycle").isEmpty());
    QVERIFY(real.part<JobPane>()->field("", "cycle")->text().isEmpty());
  }

  void the_text_is_applied_as_a_whole_and_undone() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    real.action(QStringLiteral("Job"))->trigger();
    auto* text = real.part<JobPane>()->text();
    QCOMPARE(text->toPlainText(), text_of(job_));
    text->appendPlainText(QStringLiteral("[[remark]]\nat = \"2031-04-02 09:00:00\"\ntext = \"power cut\""));
    QPushButton* apply = nullptr;
    for (auto* button : real.part<JobPane>()->findChildren<QPushButton*>())
      if (button->text().remove(u'&') == u"Apply text") apply = button;
    QVERIFY(apply && apply->isEnabled());
    apply->click();
    QVERIFY(real.settled());
    QCOMPARE(real.window.session().open().analysis.record->remarks.size(), std::size_t{1});
    QVERIFY(real.window.session().unsaved());
    real.window.session().edits().undo();
    QVERIFY(real.settled());
    QVERIFY(real.window.session().open().analysis.record->remarks.empty());
    QCOMPARE(text->toPlainText(), text_of(job_));
  }

  void line_ends_of_two_characters_are_no_change_and_stay() {
    const QString path = made::write(files_.path(), QStringLiteral("two.toml"),
                                     text_of(job_).replace(QStringLiteral("\n"), QStringLiteral("\r\n")));
    RealWindow real;
    QVERIFY(real.open({path}));
    real.action(QStringLiteral("Job"))->trigger();
    QPushButton* apply = nullptr;
    for (auto* button : real.part<JobPane>()->findChildren<QPushButton*>())
      if (button->text().remove(u'&') == u"Apply text") apply = button;
    QVERIFY(apply && !apply->isEnabled());
    real.part<JobPane>()->text()->appendPlainText(QStringLiteral("# looked at"));
    apply->click();
    QVERIFY(real.settled());
    const auto& wanted = real.window.session().wanted();
    QVERIFY(wanted.size() == 1 && wanted.front().whole);
    const QString whole = QString::fromStdString(*wanted.front().whole);
    QCOMPARE(whole.count(u'\n'), whole.count(QStringLiteral("\r\n")));
    QVERIFY(whole.contains(QStringLiteral("# looked at")));
  }

  void without_a_job_the_fields_begin_a_new_one() {
    RealWindow real;
    QVERIFY(real.open({files_.filePath(QStringLiteral("d3-n2.csv"))}));
    real.action(QStringLiteral("Job"))->trigger();
    QVERIFY(type(real, "", "work", QStringLiteral("Steam drum")));
    QCOMPARE(real.window.session().open().analysis.job->work, std::optional<std::string>("Steam drum"));
    const QString path = files_.filePath(QStringLiteral("new.toml"));
    writeInto(real, path);
    QVERIFY2(text_of(path).contains(QStringLiteral("work = \"Steam drum\"")), qPrintable(text_of(path)));
  }
};

QTEST_MAIN(JobPaneTest)
#include "job_pane_test.moc"
