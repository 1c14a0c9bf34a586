// SPDX-License-Identifier: GPL-3.0-or-later
// Verifying a report takes seconds where the log is long: it can be cancelled midway, and changes nothing
// then.

#include <QElapsedTimer>
#include <QProgressBar>
#include <QPushButton>

#include "app/gui/background/report_verification.h"
#include "app/gui/parts/message_strip.h"
#include "app/gui/parts/summary_bar.h"
#include "tests/app/gui/dialog_answers.h"
#include "tests/app/gui/report_steps.h"

using namespace soakwright;
using namespace soakwright::gui;

namespace {

constexpr int kSoon_ms = 200;
/// Of a machine that is busy with other things: still far less than verifying takes.
constexpr int kSlack_ms = 200;

QString modules_folder() { return QFileInfo(QStringLiteral(SOAKWRIGHT_PROGRAM)).absolutePath(); }

}  // namespace

class CancelledVerificationTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString long_, short_;

  /// The checks of the long report, which are running.
  static ReportChecks* begun(SigningWindow& real) {
    auto* checks = real.window.findChild<ReportChecks*>();
    if (!checks || !checks->isVisible()) return nullptr;
    auto* bar = checks->findChild<QProgressBar*>();
    const bool midway =
        QTest::qWaitFor([bar] { return bar->isVisible() && bar->value() > bar->minimum(); }, kLong_ms);
    return midway && checks->busy() ? checks : nullptr;
  }

  /// Verifies the long report until that share of it is done.
  bool reaches(ReportVerification& work, double share) const {
    double done = 0.0;
    const auto follow =
        connect(&work, &ReportVerification::progressed, &work, [&done](double now) { done = now; });
    work.start({long_, modules_folder(), {}});
    const bool reached = QTest::qWaitFor([&] { return done >= share; }, kLong_ms) && work.busy();
    disconnect(follow);
    return reached;
  }

 private slots:
  void initTestCase() {
    made::Run run;
    run.interval_s = 1;
    run.channels = 32;
    const made::Case made = made::drum_case(files_.path(), run);
    long_ = written_report(made, files_);
    QVERIFY(!long_.isEmpty());
    QTemporaryDir other;
    const QString written = written_report(made::drum_case(other.path()), other);
    short_ = files_.filePath(QStringLiteral("short.pdf"));
    QVERIFY(QFile::copy(written, short_));
  }

  void evaluating_the_files_inside_ends_at_once() {
    for (const double share : {0.0, 0.1, 0.3}) {
      ReportVerification work;
      QVERIFY(reaches(work, share));
      QElapsedTimer clock;
      clock.start();
      work.cancel();
      QVERIFY(!work.busy());
      QVERIFY(QTest::qWaitFor([&work] { return !work.working(); }, kLong_ms));
      QVERIFY2(clock.elapsed() <= kSoon_ms + kSlack_ms,
               qPrintable(QStringLiteral("at %1: %2 ms").arg(share).arg(clock.elapsed())));
    }
  }

  void what_is_printed_again_is_printed_no_further_and_not_heard_of() {
    ReportVerification work;
    QSignalSpy found(&work, &ReportVerification::finished);
    QVERIFY(reaches(work, 0.55));
    QSignalSpy shares(&work, &ReportVerification::progressed);
    work.cancel();
    QVERIFY(!work.busy());
    QVERIFY(QTest::qWaitFor([&work] { return !work.working(); }, kLong_ms));
    QVERIFY(found.isEmpty() && shares.isEmpty());
  }

  void the_share_that_is_done_grows_to_the_end() {
    ReportVerification work;
    QSignalSpy found(&work, &ReportVerification::finished);
    QSignalSpy shares(&work, &ReportVerification::progressed);
    work.start({long_, modules_folder(), {}});
    QVERIFY(found.wait(kLong_ms));
    QVERIFY(shares.count() > 5);
    double before = 0.0;
    for (const QList<QVariant>& one : shares) {
      QVERIFY(one[0].toDouble() > before);
      before = one[0].toDouble();
    }
    QVERIFY(before > 0.95 && before <= 1.0);
  }

  void another_report_is_verified_at_once() {
    ReportVerification work;
    QSignalSpy found(&work, &ReportVerification::finished);
    work.start({long_, modules_folder(), {}});
    work.start({short_, modules_folder(), {}});
    QVERIFY(work.busy());
    QVERIFY(found.wait(kLong_ms));
    QCOMPARE(found.count(), 1);
    QCOMPARE(found[0][0].toString(), short_);
    QVERIFY(!work.busy() && !work.working());
  }

  void a_report_that_is_opened_stays_open_and_is_said_to_be_not_verified() {
    SigningWindow real;
    real.window.openPaths({long_});
    QVERIFY(real.settled());
    ReportChecks* checks = begun(real);
    QVERIFY(checks);
    const QString word = real.part<SummaryBar>()->word();
    auto* cancel = buttonIn(checks, QStringLiteral("Cancel"));
    QVERIFY(cancel && cancel->isVisible() && !buttonIn(checks, QStringLiteral("Verify again"))->isEnabled());
    QElapsedTimer clock;
    clock.start();
    cancel->click();
    QVERIFY(!checks->busy() && clock.elapsed() <= kSoon_ms);
    QVERIFY(!cancel->isVisible() && !checks->findChild<QProgressBar*>()->isVisible());
    QCOMPARE(checks->summary(), QStringLiteral("Not verified: verifying was cancelled."));
    QVERIFY(checks->sign() == Sign::inconclusive && checks->list()->lines().content().lines.empty());
    QCOMPARE(real.part<MessageStrip>(QStringLiteral("Report that is open"))->text(),
             QStringLiteral("d3-n2.pdf: Not verified: verifying was cancelled."));
    QVERIFY(real.window.session().open().read_only());
    QCOMPARE(real.part<SummaryBar>()->word(), word);
    QTest::qWait(2 * kSoon_ms);
    QCOMPARE(checks->summary(), QStringLiteral("Not verified: verifying was cancelled."));
    buttonIn(checks, QStringLiteral("Verify again"))->click();
    QVERIFY(checks->busy());
    QVERIFY(real.verified());
    QCOMPARE(state_of(*checks, QStringLiteral("Pages")), QStringLiteral("holds"));
  }

  void what_was_found_before_is_shown_again() {
    SigningWindow real;
    ReportChecks* checks = real.opened(short_);
    QVERIFY(checks);
    const QString before = checks->text();
    const QString said = real.part<MessageStrip>(QStringLiteral("Report that is open"))->text();
    real.window.verifyReport(long_);
    QCOMPARE(begun(real), checks);
    QCOMPARE(checks->report(), long_);
    buttonIn(checks, QStringLiteral("Cancel"))->click();
    QCOMPARE(checks->report(), short_);
    QCOMPARE(checks->text(), before);
    QCOMPARE(real.part<MessageStrip>(QStringLiteral("Report that is open"))->text(), said);
  }

  void nothing_of_another_case_is_shown_where_its_successor_is_not_verified() {
    SigningWindow real;
    QVERIFY(real.opened(short_));
    real.window.openPaths({long_});
    QVERIFY(real.settled());
    ReportChecks* checks = begun(real);
    QVERIFY(checks);
    buttonIn(checks, QStringLiteral("Cancel"))->click();
    QCOMPARE(checks->report(), long_);
    QCOMPARE(checks->summary(), QStringLiteral("Not verified: verifying was cancelled."));
  }
};

QTEST_MAIN(CancelledVerificationTest)
#include "cancelled_verification_test.moc"
