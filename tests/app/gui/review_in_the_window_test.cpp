// SPDX-License-Identifier: GPL-3.0-or-later
// The reviewer: decides on each finding, names who signs, saves a review file that the command line takes,
// and is refused a review of another result.

#include <QComboBox>
#include <QFileDialog>
#include <QPushButton>
#include <QSignalSpy>

#include "app/gui/panes/detail_panel.h"
#include "app/gui/panes/forms/review_form.h"
#include "app/gui/parts/error_bar.h"
#include "app/gui/parts/people_dialog.h"
#include "app/gui/parts/summary_bar.h"
#include "core/procedure/job/job_file.h"
#include "core/report/open_findings.h"
#include "tests/app/gui/dialog_answers.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class ReviewInTheWindowTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString log_, procedure_, other_procedure_;

  static void decide(RealWindow& real, FindingReview::Disposition disposition, const QString& reason) {
    auto* form = real.part<ReviewForm>();
    auto* box = form->findChild<QComboBox*>();
    box->setCurrentIndex(box->findData(static_cast<int>(disposition)));
    form->findChild<QLineEdit*>()->setText(reason);
    form->findChild<QPushButton*>()->click();
  }

 private slots:
  void initTestCase() {
    log_ = made::log(files_.path(), QStringLiteral("d3-n2.csv"), made::run_with_dip());
    procedure_ = made::procedure(files_.path(), QStringLiteral("htp-021.toml"), 140, 100);
    other_procedure_ = made::procedure(files_.path(), QStringLiteral("htp-022.toml"), 130, 100);
  }

  void decisions_are_made_undone_saved_and_taken_by_the_core() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    const std::size_t open = open_findings(real.window.session().open().analysis).size();
    QVERIFY(open > 0);
    QVERIFY(!real.part<ReviewForm>()->isVisible());
    real.action(QStringLiteral("Next open finding"))->trigger();
    QVERIFY(real.part<ReviewForm>()->isVisible());
    const Selection chosen = real.window.session().selection();
    // No decision without a reason.
    decide(real, FindingReview::Disposition::accepted, {});
    QVERIFY(!real.window.session().unsaved());
    decide(real, FindingReview::Disposition::accepted, QStringLiteral("dip of 12 min, hold made up"));
    QCOMPARE(open_findings(real.window.session().open().analysis).size(), open - 1);
    QVERIFY(real.window.session().selection() == chosen);
    QVERIFY(real.window.session().unsaved());
    QVERIFY(real.window.windowTitle().contains(QStringLiteral("not saved")));
    const auto& row = real.window.session().report()->findings[chosen.index];
    QVERIFY2(QString::fromStdString(row.disposition).contains(QStringLiteral("dip of 12 min")),
             row.disposition.c_str());
    real.window.session().edits().undo();
    QCOMPARE(open_findings(real.window.session().open().analysis).size(), open);
    QVERIFY(!real.window.session().unsaved());
    real.window.session().edits().redo();

    const QString path = real.folder.filePath(QStringLiteral("review.toml"));
    QVERIFY(real.window.writeReview(path));
    QVERIFY(!real.window.session().unsaved());
    Request request;
    request.log = log_.toStdString();
    request.procedure = procedure_.toStdString();
    request.review = path.toStdString();
    const auto checked = check(request);
    QVERIFY2(checked.ok(), checked.ok() ? "" : checked.problems().front().text().c_str());
    QCOMPARE(open_findings(checked.value()).size(), open - 1);
    // Undo leads back over the saving.
    real.window.session().edits().undo();
    QCOMPARE(open_findings(real.window.session().open().analysis).size(), open);
    QVERIFY(real.window.session().unsaved());
  }

  void a_report_with_decisions_that_are_not_saved_asks_to_save_them_first() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    real.action(QStringLiteral("Next open finding"))->trigger();
    decide(real, FindingReview::Disposition::accepted, QStringLiteral("dip of 12 min, hold made up"));
    QVERIFY(real.window.writeReview(real.folder.filePath(QStringLiteral("review.toml"))));
    decide(real, FindingReview::Disposition::repeat, QStringLiteral("heated too fast"));
    QVERIFY(real.window.session().reviewUnsaved());
    answer(press(QStringLiteral("Cancel")));
    real.action(QStringLiteral("Export report…"))->trigger();
    QVERIFY(real.window.session().reviewUnsaved());
    // Saved, the export goes on: its file dialog comes next.
    bool asked_where = false;
    answer([&asked_where](QWidget* dialog) {
      if (press(QStringLiteral("Save"))(dialog)) {
        answer([&asked_where](QWidget* next) {
          asked_where = qobject_cast<QFileDialog*>(next) != nullptr;
          return asked_where && next->close();
        });
        return true;
      }
      return false;
    });
    real.action(QStringLiteral("Export report…"))->trigger();
    QVERIFY(asked_where);
    QVERIFY(!real.window.session().reviewUnsaved());
    QSignalSpy written(&real.window, &MainWindow::exported);
    real.window.exportReport(real.folder.filePath(QStringLiteral("report.pdf")));
    QVERIFY(written.wait(30'000));
    QVERIFY(written[0][1].toBool());
  }

  void names_of_the_signature_lines_are_in_the_report() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    answer([](QWidget* dialog) {
      auto* people = qobject_cast<PeopleDialog*>(dialog);
      if (!people) return false;
      for (auto* line : people->findChildren<QLineEdit*>()) {
        if (line->accessibleName() == u"Reviewed by, Name") line->setText(QStringLiteral("Ines Okafor"));
        if (line->accessibleName() == u"Reviewed by, Company")
          line->setText(QStringLiteral("Saltmarsh Heat"));
        if (line->accessibleName().startsWith(u"Reviewed by, Date"))
          line->setText(QStringLiteral("2031-04-09"));
        if (line->accessibleName() == u"Reviewed by, Remark") line->setText(QStringLiteral("chart seen"));
      }
      return press(QStringLiteral("OK"))(dialog);
    });
    real.action(QStringLiteral("Performed, reviewed, witnessed by…"))->trigger();
    bool seen = false;
    for (const SignaturePlace& place : real.window.session().report()->signatures)
      seen = seen || (place.role == "Reviewed by" && place.name == "Ines Okafor" &&
                      place.company == "Saltmarsh Heat" && place.date == "2031-04-09" &&
                      place.remark == "chart seen");
    QVERIFY(seen);
    QVERIFY(real.window.session().unsaved());
  }

  void a_review_of_another_result_is_refused() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    real.action(QStringLiteral("Next open finding"))->trigger();
    decide(real, FindingReview::Disposition::rejected, QStringLiteral("too fast"));
    const QString path = real.folder.filePath(QStringLiteral("review.toml"));
    QVERIFY(real.window.writeReview(path));
    RealWindow other;
    QVERIFY(other.open({log_, other_procedure_}));
    other.window.session().openAs(FileKind::review, path);
    QVERIFY(other.settled());
    QVERIFY(other.part<ErrorBar>()->isVisible());
    QVERIFY(other.part<ErrorBar>()->texts().first().contains(QStringLiteral("another result")));
    QVERIFY(!other.window.session().open().analysis.review);
  }

  void nothing_is_decided_while_settings_are_unsaved() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    real.window.session().change(JobChange{ColumnNames{{"TC3"}}, "role", "air"});
    QVERIFY(real.settled());
    real.action(QStringLiteral("Next open finding"))->trigger();
    decide(real, FindingReview::Disposition::accepted, QStringLiteral("no"));
    QVERIFY(!real.window.session().reviewUnsaved());
  }
};

QTEST_MAIN(ReviewInTheWindowTest)
#include "review_in_the_window_test.moc"
