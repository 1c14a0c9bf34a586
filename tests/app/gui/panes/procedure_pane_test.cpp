// SPDX-License-Identifier: GPL-3.0-or-later
// The procedure edited in the window: form and text are one file, its comments stay, every change is
// evaluated at once and undone as easily, what cannot be read is said beside its field and is written
// nowhere.

#include "app/gui/panes/procedure_pane.h"

#include <QComboBox>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QToolButton>

#include "app/gui/panes/forms/key_form.h"
#include "app/gui/panes/forms/procedure_keys.h"
#include "app/gui/panes/forms/stage_card.h"
#include "app/gui/parts/message_strip.h"
#include "app/gui/parts/summary_bar.h"
#include "core/procedure/procedure_file.h"
#include "tests/app/gui/dialog_answers.h"
#include "tests/app/gui/import_settings_steps.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

namespace {

/// Keys that the parser knows in the table that begins with `header`, as it lists them for a key that it
/// does not know.
QSet<QString> keys_known(const QString& before, const QString& header, const QString& after) {
  const QString text = before + header + QStringLiteral("\nqqqqqqqqqqqqqqqqqqqqqqqq = 1\n") + after;
  const auto read = parse_procedure(text.toStdString(), "p.toml");
  QSet<QString> known;
  if (read) return known;
  for (const Problem& problem : read.problems()) {
    if (problem.what.find("qqqq") == std::string::npos) continue;
    static const QRegularExpression word(QStringLiteral("[a-z_]{3,}"));
    for (auto found = word.globalMatch(QString::fromStdString(problem.help)); found.hasNext();)
      known.insert(found.next().captured());
  }
  return known;
}

}  // namespace

class ProcedurePaneTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString log_, procedure_;

  static QString text_of(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
  }
  static bool type(RealWindow& real, KeyForm* form, const std::string& key, const QString& text) {
    QLineEdit* line = form->line(key);
    line->setText(text);
    QTest::keyClick(line, Qt::Key_Return);
    return real.settled();
  }
  static KeyForm* stage(RealWindow& real, std::size_t number) {
    return real.part<ProcedurePane>()->stages()[number - 1]->form();
  }
  static QAbstractButton* button(RealWindow& real, const char* text) {
    return buttonIn(real.part<ProcedurePane>(), QString::fromLatin1(text));
  }
  static QString word(RealWindow& real) { return real.part<SummaryBar>()->word(); }

 private slots:
  void init() {
    log_ = made::log(files_.path(), QStringLiteral("d3-n2.csv"), {});
    procedure_ = made::procedure(files_.path(), QStringLiteral("htp-021.toml"), 140, 100);
    made::write(files_.path(), QStringLiteral("htp-021.toml"),
                QStringLiteral("# agreed\n") + text_of(procedure_));
  }

  // The parser itself names the keys that it knows.
  void every_key_of_a_procedure_has_a_field() {
    const QString head = QStringLiteral("soakwright = \"procedure 1\"\nnumber = \"1\"\nunit = \"C\"\n");
    const QString hold = QStringLiteral("[[stage]]\nkind = \"hold\"\nlow = 590\ntime_min = \"1 h\"\n");
    const auto compare = [](QSet<QString> known, const std::vector<FormKey>& keys) {
      known -= {QStringLiteral("soakwright"), QStringLiteral("kind"), QStringLiteral("stage"),
                QStringLiteral("record"), QStringLiteral("evaluation")};
      QVERIFY(!known.isEmpty());
      for (const FormKey& key : keys) known.remove(QString::fromStdString(key.key));
      // Words of the sentence around the keys, and no key.
      known -= {QStringLiteral("known"), QStringLiteral("keys"), QStringLiteral("are"), QStringLiteral("and"),
                QStringLiteral("use"),   QStringLiteral("one"),  QStringLiteral("did"), QStringLiteral("you"),
                QStringLiteral("mean"),  QStringLiteral("here")};
      QVERIFY2(known.isEmpty(), qPrintable(QStringList(known.values()).join(u' ')));
    };
    compare(keys_known(head, {}, hold), procedure_keys(""));
    compare(keys_known(head + hold, QStringLiteral("[evaluation]"), {}), procedure_keys("evaluation"));
    compare(keys_known(head + hold, QStringLiteral("[record]"), {}), procedure_keys("record"));
    for (const auto& [kind, name] : stage_kinds())
      compare(
          keys_known(head, QStringLiteral("[[stage]]\nkind = \"%1\"").arg(QString::fromStdString(kind)), {}),
          stage_keys(kind));
  }

  void a_field_shows_and_changes_its_line_and_no_other() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    real.action(QStringLiteral("Procedure"))->trigger();
    QCOMPARE(stage(real, 1)->line("rate_max")->text(), QStringLiteral("140"));
    QCOMPARE(stage(real, 2)->line("time_min")->text(), QStringLiteral("100 min"));
    const QString before = text_of(procedure_);
    QVERIFY(type(real, stage(real, 1), "rate_max", QStringLiteral("150")));
    QVERIFY(type(real, stage(real, 2), "tempering_min", QStringLiteral("17.5")));
    QVERIFY(type(real, real.part<ProcedurePane>()->form("record"), "thermocouples_min", QStringLiteral("3")));
    QVERIFY(
        type(real, real.part<ProcedurePane>()->form("evaluation"), "rate_window", QStringLiteral("10 min")));
    QCOMPARE(text_of(procedure_), before);
    QVERIFY(real.window.writeProcedure(procedure_));
    QVERIFY(real.settled());
    QString expected = before;
    expected.replace(QStringLiteral("rate_max = 140"), QStringLiteral("rate_max = 150"));
    expected.replace(QStringLiteral("excursion_time_max = \"0 s\"\n"),
                     QStringLiteral("excursion_time_max = \"0 s\"\ntempering_min = 17.5\n"));
    expected.replace(QStringLiteral("gap_max = \"5 min\"\n"),
                     QStringLiteral("gap_max = \"5 min\"\nthermocouples_min = 3\n"));
    expected += QStringLiteral("\n[evaluation]\nrate_window = \"10 min\"\n");
    QCOMPARE(text_of(procedure_), expected);
  }

  void a_changed_limit_is_evaluated_at_once_and_undone() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    real.action(QStringLiteral("Procedure"))->trigger();
    QCOMPARE(word(real), QStringLiteral("Met"));
    const auto record = real.window.session().open().analysis.record;
    QVERIFY(type(real, stage(real, 1), "rate_max", QStringLiteral("90")));
    QCOMPARE(word(real), QStringLiteral("Not met (not saved)"));
    QVERIFY(real.window.isWindowModified());
    QVERIFY(real.part<MessageStrip>(QStringLiteral("Unsaved changes"))
                ->text()
                .contains(QStringLiteral("procedure changed")));
    QVERIFY(real.window.session().open().analysis.record == record);
    QCOMPARE(real.window.session().report()->unsaved.size(), std::size_t{1});
    real.window.session().edits().undo();
    QVERIFY(real.settled());
    QCOMPARE(word(real), QStringLiteral("Met"));
    QVERIFY(!real.window.isWindowModified());
    QCOMPARE(stage(real, 1)->line("rate_max")->text(), QStringLiteral("140"));
    real.window.session().edits().redo();
    QVERIFY(real.settled());
    QCOMPARE(word(real), QStringLiteral("Not met (not saved)"));
  }

  void what_was_saved_is_undone_too() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    QVERIFY(type(real, stage(real, 1), "rate_max", QStringLiteral("90")));
    answer(press(QStringLiteral("Save")));
    real.action(QStringLiteral("Save…"))->trigger();
    QVERIFY(real.settled());
    QVERIFY(text_of(procedure_).startsWith(QStringLiteral("# agreed\n")));
    QVERIFY(text_of(procedure_).contains(QStringLiteral("rate_max = 90")));
    QVERIFY(!real.window.isWindowModified());
    real.window.session().edits().undo();
    QVERIFY(real.settled());
    QCOMPARE(word(real), QStringLiteral("Met (not saved)"));
    QVERIFY(real.window.isWindowModified());
    QVERIFY(text_of(procedure_).contains(QStringLiteral("rate_max = 90")));
  }

  void what_is_wrong_is_said_beside_its_field_and_written_nowhere() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    real.action(QStringLiteral("Procedure"))->trigger();
    const QString before = text_of(procedure_);
    QVERIFY(type(real, stage(real, 2), "low", QStringLiteral("690")));
    QVERIFY(type(real, stage(real, 3), "spread_max", QStringLiteral("wide")));
    QVERIFY2(stage(real, 2)->problemOf("high").contains(QStringLiteral("`low`")),
             qPrintable(real.part<ProcedurePane>()->message()));
    QVERIFY(stage(real, 3)->problemOf("spread_max").contains(QStringLiteral("spread_max")));
    QVERIFY(stage(real, 1)->problemOf("rate_max").isEmpty());
    QCOMPARE(stage(real, 2)->line("low")->text(), QStringLiteral("690"));
    QVERIFY(!real.action(QStringLiteral("Save…"))->isEnabled());
    QCOMPARE(word(real), QStringLiteral("Met (not saved)"));
    QVERIFY(real.part<MessageStrip>(QStringLiteral("Unsaved changes"))
                ->text()
                .contains(QStringLiteral("Not evaluated")));
    QCOMPARE(text_of(procedure_), before);
    QVERIFY(type(real, stage(real, 2), "low", QStringLiteral("595")));
    QVERIFY(type(real, stage(real, 3), "spread_max", QStringLiteral("50")));
    QVERIFY(real.part<ProcedurePane>()->message().isEmpty());
    QVERIFY(real.action(QStringLiteral("Save…"))->isEnabled());
  }

  void stages_are_added_moved_and_removed() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    real.action(QStringLiteral("Procedure"))->trigger();
    auto* pane = real.part<ProcedurePane>();
    buttonIn(pane->stages()[2], QStringLiteral("Up"))->click();
    QVERIFY(real.settled());
    QCOMPARE(pane->stages()[1]->kind(), std::string("cool"));
    QCOMPARE(pane->stages()[2]->kind(), std::string("hold"));
    buttonIn(pane->stages()[1], QStringLiteral("Remove"))->click();
    QVERIFY(real.settled());
    QCOMPARE(pane->stages().size(), std::size_t{2});
    for (QAction* kind : pane->findChildren<QAction*>())
      if (kind->text() == u"Maintain") kind->trigger();
    QVERIFY(real.settled());
    QCOMPARE(pane->stages().size(), std::size_t{3});
    // A new stage says what it needs.
    QVERIFY(pane->stages()[2]->form()->problemOf("low").contains(QStringLiteral("`low`")));
    for (int i = 0; i < 3; ++i) real.window.session().edits().undo();
    QVERIFY(real.settled());
    QCOMPARE(pane->text()->toPlainText(), text_of(procedure_));
  }

  void the_text_is_applied_as_a_whole() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    real.action(QStringLiteral("Procedure"))->trigger();
    auto* text = real.part<ProcedurePane>()->text();
    QCOMPARE(text->toPlainText(), text_of(procedure_));
    QString now = text->toPlainText();
    text->setPlainText(now.replace(QStringLiteral("rate_max = 140"), QStringLiteral("rate_max = 90")));
    QCOMPARE(word(real), QStringLiteral("Met"));
    button(real, "Apply text")->click();
    QVERIFY(real.settled());
    QCOMPARE(word(real), QStringLiteral("Not met (not saved)"));
    QCOMPARE(stage(real, 1)->line("rate_max")->text(), QStringLiteral("90"));
    text->setPlainText(QStringLiteral("[["));
    button(real, "Apply text")->click();
    QVERIFY(real.settled());
    QVERIFY(!real.part<ProcedurePane>()->message().isEmpty());
    QVERIFY(!stage(real, 1)->isEnabled());
    QCOMPARE(word(real), QStringLiteral("Not met (not saved)"));
  }

  void what_is_changed_is_asked_about_before_it_is_lost() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    QVERIFY(type(real, stage(real, 1), "rate_max", QStringLiteral("90")));
    answer(press(QStringLiteral("Cancel")));
    QVERIFY(!real.window.close());
    const QString other = made::procedure(files_.path(), QStringLiteral("other.toml"), 200, 100);
    answer(press(QStringLiteral("Cancel")));
    real.window.openPaths({other});
    QVERIFY(real.settled());
    QCOMPARE(real.window.session().open().procedure_path, procedure_);
    answer(press(QStringLiteral("Save")));
    QVERIFY(real.window.close());
    QVERIFY(text_of(procedure_).contains(QStringLiteral("rate_max = 90")));
  }

  void after_a_crash_the_change_is_offered_and_not_applied() {
    QTemporaryDir settings;
    const QString path = settings.filePath(QStringLiteral("gui.ini"));
    {
      SavedSettings memory(path);
      RealWindow real;
      QVERIFY(real.open({log_, procedure_}));
      const ChangesPlace place{real.window.session().logSha(), {}};
      QString text = text_of(procedure_);
      memory.keepChanges(
          place, {{},
                  DraftText{text.replace(QStringLiteral("rate_max = 140"), QStringLiteral("rate_max = 90"))
                                .toStdString()}});
    }
    SavedSettings memory(path);
    MainWindow window(memory);
    window.show();
    window.session().openFiles({log_, procedure_});
    QTRY_VERIFY(window.session().open().has_record());
    auto* summary = window.findChild<SummaryBar*>();
    QCOMPARE(summary->word(), QStringLiteral("Met"));
    for (auto* strip : window.findChildren<MessageStrip*>())
      if (strip->accessibleName() == u"Changes of an earlier session") {
        QVERIFY(!strip->text().isEmpty());
        buttonIn(strip, QStringLiteral("Restore"))->click();
      }
    QTRY_COMPARE(summary->word(), QStringLiteral("Not met (not saved)"));
  }

  void a_report_waits_for_the_procedure_to_be_saved() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    QVERIFY(type(real, stage(real, 1), "rate_max", QStringLiteral("90")));
    answer(press(QStringLiteral("Cancel")));
    real.action(QStringLiteral("Export report…"))->trigger();
    QVERIFY(!text_of(procedure_).contains(QStringLiteral("rate_max = 90")));
    answer(press(QStringLiteral("Save")));
    real.action(QStringLiteral("Export report…"))->trigger();
    QVERIFY(real.settled());
    QVERIFY(text_of(procedure_).contains(QStringLiteral("rate_max = 90")));
  }
};

QTEST_MAIN(ProcedurePaneTest)
#include "procedure_pane_test.moc"
