// SPDX-License-Identifier: GPL-3.0-or-later
// A report signed in the window. What other people's tools say of the signature: pdfsig of poppler.

#include <QComboBox>
#include <QLineEdit>
#include <QProcess>
#include <QPushButton>
#include <QStatusBar>

#include "app/gui/parts/message_strip.h"
#include "app/gui/parts/sign_dialog.h"
#include "tests/app/gui/dialog_answers.h"
#include "tests/app/gui/report_steps.h"

using namespace soakwright;
using namespace soakwright::gui;

namespace {

const QString kWord = QStringLiteral("open sesame");

QString output_of(const QString& program, const QStringList& words) {
  QProcess process;
  process.start(program, words);
  if (!process.waitForFinished(kLong_ms) || process.exitCode() != 0)
    return QStringLiteral("failed: ") + QString::fromUtf8(process.readAllStandardError());
  return QString::fromUtf8(process.readAllStandardOutput());
}

QLineEdit* field(QWidget* dialog, const QString& name) {
  for (auto* line : dialog->findChildren<QLineEdit*>())
    if (line->accessibleName() == name) return line;
  return nullptr;
}

}  // namespace

class SigningInTheWindowTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  made::Case case_;
  QString report_, key_, certificate_, open_key_, stranger_;

  QString copyOfReport(const QString& name) {
    const QString path = files_.filePath(name);
    QFile::remove(path);
    return QFile::copy(report_, path) ? path : QString();
  }

  /// Presses Sign with these fields filled in; the dialog goes on as `then` says.
  void signWith(RealWindow& real, const QString& report, const QString& key, const QString& password,
                std::function<bool(QWidget*)> then) {
    answer([=, this](QWidget* dialog) {
      if (!qobject_cast<SignDialog*>(dialog)) return false;
      field(dialog, QStringLiteral("Report"))->setText(report);
      field(dialog, QStringLiteral("Key"))->setText(key);
      field(dialog, QStringLiteral("Certificate"))->setText(certificate_);
      field(dialog, QStringLiteral("Password of the key"))->setText(password);
      field(dialog, QStringLiteral("Name"))->setText(QStringLiteral("T. Lindqvist"));
      answer(then);
      buttonIn(dialog, QStringLiteral("Sign"))->click();
      return true;
    });
    real.action(QStringLiteral("Sign report…"))->trigger();
  }

 private slots:
  void initTestCase() {
    case_ = made::drum_case(files_.path());
    report_ = written_report(case_, files_);
    QVERIFY(!report_.isEmpty());
    key_ = files_.filePath(QStringLiteral("key.pem"));
    open_key_ = files_.filePath(QStringLiteral("open-key.pem"));
    certificate_ = files_.filePath(QStringLiteral("certificate.pem"));
    const QString made =
        output_of(QStringLiteral("openssl"),
                  {QStringLiteral("req"), QStringLiteral("-x509"), QStringLiteral("-newkey"),
                   QStringLiteral("rsa:2048"), QStringLiteral("-nodes"), QStringLiteral("-subj"),
                   QStringLiteral("/CN=T. Lindqvist"), QStringLiteral("-days"), QStringLiteral("2"),
                   QStringLiteral("-addext"), QStringLiteral("keyUsage=digitalSignature,nonRepudiation"),
                   QStringLiteral("-keyout"), open_key_, QStringLiteral("-out"), certificate_});
    QVERIFY2(!made.startsWith(u"failed"), qPrintable(made));
    stranger_ = files_.filePath(QStringLiteral("stranger.pem"));
    const QString strange =
        output_of(QStringLiteral("openssl"),
                  {QStringLiteral("req"), QStringLiteral("-x509"), QStringLiteral("-newkey"),
                   QStringLiteral("rsa:2048"), QStringLiteral("-nodes"), QStringLiteral("-subj"),
                   QStringLiteral("/CN=Nobody Known"), QStringLiteral("-days"), QStringLiteral("2"),
                   QStringLiteral("-keyout"), files_.filePath(QStringLiteral("stranger-key.pem")),
                   QStringLiteral("-out"), stranger_});
    QVERIFY2(!strange.startsWith(u"failed"), qPrintable(strange));
    const QString closed =
        output_of(QStringLiteral("openssl"), {QStringLiteral("pkcs8"), QStringLiteral("-topk8"),
                                              QStringLiteral("-in"), open_key_, QStringLiteral("-out"), key_,
                                              QStringLiteral("-passout"), QStringLiteral("pass:") + kWord});
    QVERIFY2(!closed.startsWith(u"failed"), qPrintable(closed));
  }

  void a_report_is_signed_into_another_file_and_can_be_verified_at_once() {
    SigningWindow real;
    const QString report = copyOfReport(QStringLiteral("to-sign.pdf"));
    const QString out = files_.filePath(QStringLiteral("signed.pdf"));
    const QByteArray before = bytes_at(report);
    answer([&](QWidget* dialog) {
      QLineEdit* place = field(dialog, QStringLiteral("Save as"));
      if (!place) return false;
      place->setText(out);
      field(dialog, QStringLiteral("Report"))->setText(report);
      field(dialog, QStringLiteral("Key"))->setText(key_);
      field(dialog, QStringLiteral("Certificate"))->setText(certificate_);
      field(dialog, QStringLiteral("Password of the key"))->setText(kWord);
      field(dialog, QStringLiteral("Name"))->setText(QStringLiteral("T. Lindqvist"));
      answer(press(QStringLiteral("Verify it")));
      buttonIn(dialog, QStringLiteral("Sign"))->click();
      return true;
    });
    real.action(QStringLiteral("Sign report…"))->trigger();
    QVERIFY(bytes_at(report) == before);
    QVERIFY(real.window.statusBar()->currentMessage().startsWith(QStringLiteral("Signed: ")));
    const QString said = output_of(QStringLiteral("pdfsig"), {QStringLiteral("-nocert"), out});
    QVERIFY2(said.contains(QStringLiteral("Signature is Valid")), qPrintable(said));
    auto* checks = real.window.findChild<ReportChecks*>();
    QVERIFY(checks);
    QVERIFY(real.verified());
    QCOMPARE(state_of(*checks, QStringLiteral("Signature 1")), QStringLiteral("holds"));
    QCOMPARE(state_of(*checks, QStringLiteral("Certificate 1")), QStringLiteral("holds"));
    QCOMPARE(checks->summary(), QStringLiteral("Every check holds."));
    QVERIFY(!real.window.session().open().has_record());
    // Nobody vouches for the signer until a certificate is trusted; one that does not is said to fail.
    QVERIFY2(
        checks->text().contains(QStringLiteral("no trusted one was named. Name it in Edit, Preferences.")),
        qPrintable(checks->text()));
    Preferences trusting;
    trusting.trusted = certificate_;
    real.memory.keepPreferences(trusting);
    buttonIn(checks, QStringLiteral("Verify again"))->click();
    QVERIFY(real.verified());
    QVERIFY2(!checks->text().contains(QStringLiteral("trusted")), qPrintable(checks->text()));
    QCOMPARE(state_of(*checks, QStringLiteral("Certificate 1")), QStringLiteral("holds"));
    trusting.trusted = stranger_;
    real.memory.keepPreferences(trusting);
    buttonIn(checks, QStringLiteral("Verify again"))->click();
    QVERIFY(real.verified());
    QCOMPARE(state_of(*checks, QStringLiteral("Certificate 1")), QStringLiteral("does not hold"));
  }

  void a_report_that_is_open_is_signed_in_place_after_a_question_and_read_again() {
    SigningWindow real;
    const QString report = copyOfReport(QStringLiteral("in-place.pdf"));
    ReportChecks* checks = real.opened(report);
    QVERIFY(checks);
    checks->close();
    const QByteArray before = bytes_at(report);
    signWith(real, report, open_key_, QString(), press(QStringLiteral("Replace")));
    QVERIFY(real.settled());
    QVERIFY(real.verified());
    QVERIFY(bytes_at(report).startsWith(before) && bytes_at(report).size() > before.size());
    QCOMPARE(state_of(*checks, QStringLiteral("Signature 1")), QStringLiteral("holds"));
    QVERIFY(real.part<MessageStrip>(QStringLiteral("Files changed on disk"))->text().isEmpty());
  }

  void a_wrong_password_is_refused_in_the_dialog_and_the_file_is_as_it_was() {
    SigningWindow real;
    const QString report = copyOfReport(QStringLiteral("kept.pdf"));
    const QByteArray before = bytes_at(report);
    QString said;
    const auto wait_for_the_words = [&said](QWidget* dialog) {
      auto* sign = qobject_cast<SignDialog*>(dialog);
      if (!sign || sign->problem().isEmpty()) return false;
      said = sign->problem();
      QTest::keyClick(sign, Qt::Key_Escape);
      return true;
    };
    signWith(real, report, key_, QStringLiteral("open says me"), [&](QWidget* dialog) {
      if (!press(QStringLiteral("Replace"))(dialog)) return false;
      answer(wait_for_the_words);
      return true;
    });
    QVERIFY2(said.contains(QStringLiteral("the password does not open it")) &&
                 said.contains(QStringLiteral("type it again")),
             qPrintable(said));
    signWith(real, report, key_, QString(), [&](QWidget* dialog) {
      said.clear();
      if (!press(QStringLiteral("Replace"))(dialog)) return false;
      answer(wait_for_the_words);
      return true;
    });
    QVERIFY2(said.contains(QStringLiteral("type its password")), qPrintable(said));
    QVERIFY(bytes_at(report) == before);
  }

  void cancel_at_the_question_signs_nothing() {
    SigningWindow real;
    const QString report = copyOfReport(QStringLiteral("cancelled.pdf"));
    const QByteArray before = bytes_at(report);
    signWith(real, report, open_key_, QString(), [](QWidget* dialog) {
      if (!press(QStringLiteral("Cancel"))(dialog)) return false;
      answer(press(QStringLiteral("Cancel")));
      return true;
    });
    QVERIFY(bytes_at(report) == before);
  }

  void the_dialog_proposes_the_exported_report_and_can_be_used_by_keyboard() {
    SigningWindow real;
    QVERIFY(real.open({case_.job}));
    QSignalSpy written(&real.window, &MainWindow::exported);
    const QString report = files_.filePath(QStringLiteral("exported.pdf"));
    real.window.exportReport(report);
    QVERIFY(written.wait(kLong_ms));
    QString proposed, focus;
    QStringList unnamed, order;
    answer([&](QWidget* dialog) {
      QLineEdit* line = field(dialog, QStringLiteral("Report"));
      if (!line) return false;
      proposed = line->text();
      for (QWidget* part : dialog->findChildren<QWidget*>())
        if ((part->focusPolicy() & Qt::TabFocus) != 0 && part->isVisible()) {
          const QAccessibleInterface* face = QAccessible::queryAccessibleInterface(part);
          if (!face || face->text(QAccessible::Name).isEmpty())
            unnamed.append(QString::fromLatin1(part->metaObject()->className()));
        }
      if (const QWidget* const focused = dialog->focusWidget()) focus = focused->accessibleName();
      for (QWidget* part = line; part && !order.contains(QStringLiteral("Save as"));
           part = part->nextInFocusChain())
        if (qobject_cast<QLineEdit*>(part) || qobject_cast<QComboBox*>(part))
          order.append(part->accessibleName());
      QTest::keyClick(dialog, Qt::Key_Escape);
      return true;
    });
    real.action(QStringLiteral("Sign report…"))->trigger();
    QCOMPARE(proposed, report);
    QCOMPARE(focus, QStringLiteral("Key"));
    QVERIFY2(unnamed.isEmpty(), qPrintable(unnamed.join(u' ')));
    QCOMPARE(order, (QStringList{QStringLiteral("Report"), QStringLiteral("Key"),
                                 QStringLiteral("Certificate"), QStringLiteral("Password of the key"),
                                 QStringLiteral("Name"), QStringLiteral("Role"), QStringLiteral("Save as")}));
  }
};

QTEST_MAIN(SigningInTheWindowTest)
#include "signing_in_the_window_test.moc"
