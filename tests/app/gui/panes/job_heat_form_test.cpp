// SPDX-License-Identifier: GPL-3.0-or-later
// Preheat, bands, tempering and hydrogen of a job, edited in fields: each key goes where the job has it,
// comments stay, and what is wrong is said beside its field.

#include "app/gui/panes/forms/job_heat_form.h"

#include <QComboBox>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>

#include "app/gui/panes/forms/key_form.h"
#include "app/gui/panes/forms/weld_cards.h"
#include "app/gui/panes/job_pane.h"
#include "core/procedure/job/job_file.h"
#include "tests/app/gui/import_settings_steps.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class JobHeatFormTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString job_;

  static QString text_of(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
  }
  void append(const QString& more) {
    made::write(files_.path(), QStringLiteral("job.toml"), text_of(job_) + more);
  }
  bool open(RealWindow& real) const {
    if (!real.open({job_})) return false;
    real.action(QStringLiteral("Job"))->trigger();
    return true;
  }
  static JobHeatForm* heat(RealWindow& real) { return real.part<JobPane>()->heat(); }
  static bool type(RealWindow& real, const KeyForm* form, const std::string& key, const QString& text) {
    form->line(key)->setText(text);
    QTest::keyClick(form->line(key), Qt::Key_Return);
    return real.settled();
  }
  static const Job& job(RealWindow& real) { return *real.window.session().open().analysis.job; }

 private slots:
  void init() { job_ = made::drum_case(files_.path()).job; }

  void qualified_tempering_is_typed_and_saved_and_comments_stay() {
    append(QStringLiteral(
        "\n# from the qualification\n[qualified]\nparameter = 18.6 # PQR 14\nsource = \"PQR 14\"\n"));
    const QString before = text_of(job_);
    RealWindow real;
    QVERIFY(open(real));
    QCOMPARE(heat(real)->form("qualified")->line("parameter")->text(), QStringLiteral("18.6"));
    QVERIFY(type(real, heat(real)->form("qualified"), "parameter", QStringLiteral("19.1")));
    QCOMPARE(*job(real).qualified->parameter, 19.1);
    QCOMPARE(text_of(job_), before);
    writeInto(real, job_);
    QCOMPARE(text_of(job_), QString(before).replace(QStringLiteral("18.6"), QStringLiteral("19.1")));
  }

  void holds_take_the_place_of_the_parameter_and_undo_brings_it_back() {
    append(QStringLiteral("\n[qualified]\nparameter = 18.6\nsource = \"PQR 14\"\n"));
    RealWindow real;
    QVERIFY(open(real));
    const KeyForm* form = heat(real)->form("qualified");
    QVERIFY(type(real, form, "parameter", {}));
    QVERIFY(type(real, form, "holds", QStringLiteral("[[\"620 C\", \"8 h\"]]")));
    QVERIFY2(real.window.session().sheetTexts().isEmpty(),
             qPrintable(real.window.session().sheetTexts().join(u'\n')));
    QCOMPARE(job(real).qualified->holds.size(), std::size_t{1});
    QCOMPARE(job(real).qualified->holds[0].at.celsius(), 620.0);
    QCOMPARE(job(real).qualified->holds[0].seconds, 8.0 * 3600.0);
    real.window.session().edits().undo();
    QVERIFY(real.settled());
    real.window.session().edits().undo();
    QVERIFY(real.settled());
    QCOMPARE(form->line("parameter")->text(), QStringLiteral("18.6"));
  }

  void what_hydrogen_lacks_is_said_beside_its_field_until_it_is_given() {
    RealWindow real;
    QVERIFY(open(real));
    KeyForm* form = heat(real)->form("hydrogen");
    QVERIFY(type(real, form, "diffusivity", QStringLiteral("Coe and Moreton 1969")));
    QVERIFY2(form->problemOf("shape").contains(QStringLiteral("shape")),
             qPrintable(real.window.session().sheetTexts().join(u'\n')));
    take(form->box("shape"), form->box("shape")->findData(QStringLiteral("plate")));
    QVERIFY(real.settled());
    QVERIFY(type(real, form, "thickness", QStringLiteral("38 mm")));
    QVERIFY2(real.window.session().sheetTexts().isEmpty(),
             qPrintable(real.window.session().sheetTexts().join(u'\n')));
    QVERIFY(form->problemOf("shape").isEmpty());
    QCOMPARE(job(real).hydrogen->thickness->millimetres(), 38.0);
    QVERIFY(!real.window.session().report()->heat.empty());
  }

  void a_wrong_value_stays_in_its_field_and_is_refused_there() {
    append(QStringLiteral("\n[composition]\nC = 0.18\n"));
    RealWindow real;
    QVERIFY(open(real));
    const KeyForm* form = heat(real)->form("composition");
    QVERIFY(type(real, form, "Mn", QStringLiteral("-1")));
    QVERIFY2(!form->problemOf("Mn").isEmpty(), qPrintable(real.window.session().sheetTexts().join(u'\n')));
    QCOMPARE(form->line("Mn")->text(), QStringLiteral("-1"));
    QVERIFY(type(real, form, "Mn", QStringLiteral("1.2")));
    QVERIFY(form->problemOf("Mn").isEmpty());
    QCOMPARE(*job(real).composition->percent[static_cast<std::size_t>(Element::Mn)], 1.2);
  }

  void a_table_goes_with_its_last_key() {
    append(QStringLiteral("\n[composition]\nC = 0.18\n"));
    RealWindow real;
    QVERIFY(open(real));
    QVERIFY(type(real, heat(real)->form("composition"), "C", {}));
    QVERIFY2(real.window.session().sheetTexts().isEmpty(),
             qPrintable(real.window.session().sheetTexts().join(u'\n')));
    QVERIFY(!job(real).composition);
  }

  void the_published_preheat_is_chosen() {
    append(QStringLiteral("\n[composition]\nC = 0.18\nMn = 1.2\nSi = 0.3\n"));
    // The table is by thickness: the procedure gives it.
    const QString procedure = files_.filePath(QStringLiteral("htp-021.toml"));
    made::write(files_.path(), QStringLiteral("htp-021.toml"),
                text_of(procedure).replace(QStringLiteral("unit = \"C\"\n"),
                                           QStringLiteral("unit = \"C\"\nthickness = \"38 mm\"\n")));
    RealWindow real;
    QVERIFY(open(real));
    QComboBox* box = heat(real)->form({})->box("minimum_preheat");
    take(box, 1);
    QVERIFY(real.settled());
    QVERIFY2(job(real).minimum_preheat == PreheatTable::aws_d1_1_category_b,
             qPrintable(real.window.session().sheetTexts().join(u'\n')));
  }

  void bands_are_added_filled_and_removed() {
    RealWindow real;
    QVERIFY(open(real));
    QCOMPARE(heat(real)->bands(), std::size_t{0});
    heat(real)->addBand()->click();
    QVERIFY(real.settled());
    QCOMPARE(heat(real)->bands(), std::size_t{1});
    // A band has a diameter: until it is typed it is asked for beside its field.
    QVERIFY(!heat(real)->band(0)->problemOf("diameter").isEmpty());
    for (const auto& [key, value] :
         std::initializer_list<std::pair<const char*, QString>>{{"diameter", QStringLiteral("508 mm")},
                                                                {"wall", QStringLiteral("38 mm")},
                                                                {"soak_band", QStringLiteral("150 mm")},
                                                                {"heated_band", QStringLiteral("500 mm")}})
      QVERIFY(type(real, heat(real)->band(0), key, value));
    QVERIFY2(real.window.session().sheetTexts().isEmpty(),
             qPrintable(real.window.session().sheetTexts().join(u'\n')));
    QCOMPARE(job(real).bands.size(), std::size_t{1});
    QCOMPARE(job(real).bands[0].heated_band->millimetres(), 500.0);
    QVERIFY(!real.window.session().report()->bands.empty());
    for (auto* button : heat(real)->findChildren<QPushButton*>())
      if (button->accessibleName() == u"Remove band 1") button->click();
    QVERIFY(real.settled());
    QCOMPARE(heat(real)->bands(), std::size_t{0});
    QVERIFY(job(real).bands.empty());
  }

  void each_of_several_welds_has_a_composition_of_its_own() {
    made::write(files_.path(), QStringLiteral("job.toml"),
                text_of(job_).remove(QStringLiteral("weld = \"W-117\"\n")) +
                    QStringLiteral("\n# two welds\n[[weld]]\nnumber = \"W-1\"\ncomposition = { C = 0.18 }\n"
                                   "[[weld]]\nnumber = \"W-2\"\n"));
    RealWindow real;
    QVERIFY(open(real));
    WeldCards* welds = real.part<JobPane>()->welds();
    QCOMPARE(welds->welds(), std::size_t{2});
    QCOMPARE(welds->form(1)->line("number")->text(), QStringLiteral("W-2"));
    QCOMPARE(welds->composition(0)->line("C")->text(), QStringLiteral("0.18"));
    QVERIFY(type(real, welds->composition(0), "Mn", QStringLiteral("1.2")));
    QVERIFY(type(real, welds->composition(1), "C", QStringLiteral("0.12")));
    QVERIFY2(real.window.session().sheetTexts().isEmpty(),
             qPrintable(real.window.session().sheetTexts().join(u'\n')));
    QCOMPARE(*job(real).welds[0].composition->percent[static_cast<std::size_t>(Element::Mn)], 1.2);
    QCOMPARE(*job(real).welds[1].composition->percent[static_cast<std::size_t>(Element::C)], 0.12);
    const QString text = real.part<JobPane>()->text()->toPlainText();
    QVERIFY2(text.contains(QStringLiteral("# two welds\n[[weld]]\nnumber = \"W-1\"\n"
                                          "composition = { C = 0.18, Mn = 1.2 }\n")),
             qPrintable(text));
    QVERIFY(type(real, welds->composition(1), "C", {}));
    QVERIFY(!job(real).welds[1].composition);
    for (const QString& wrong : {QStringLiteral("-1"), QStringLiteral("1,2")}) {
      QVERIFY(type(real, welds->composition(0), "Mn", wrong));
      QVERIFY2(welds->problemOf(0).contains(QStringLiteral("Mn")), qPrintable(welds->problemOf(0)));
      QCOMPARE(welds->composition(0)->line("Mn")->text(), wrong);
    }
    QVERIFY(type(real, welds->composition(0), "Mn", QStringLiteral("1.1")));
    QVERIFY(welds->problemOf(0).isEmpty());
  }

  void a_composition_under_a_header_of_its_own_is_left_to_the_text() {
    made::write(files_.path(), QStringLiteral("job.toml"),
                text_of(job_).remove(QStringLiteral("weld = \"W-117\"\n")) +
                    QStringLiteral("\n[[weld]]\nnumber = \"W-1\"\n[weld.composition]\nC = 0.18\n"));
    RealWindow real;
    QVERIFY(open(real));
    WeldCards* welds = real.part<JobPane>()->welds();
    QCOMPARE(welds->welds(), std::size_t{1});
    QVERIFY(job(real).welds[0].composition);
    QVERIFY(!welds->composition(0)->isEnabled());
  }

  void a_job_with_one_weld_shows_no_cards_and_several_are_added() {
    RealWindow real;
    QVERIFY(open(real));
    WeldCards* welds = real.part<JobPane>()->welds();
    QVERIFY(welds->isHidden());
    real.part<JobPane>()->field("", "weld")->setText({});
    QTest::keyClick(real.part<JobPane>()->field("", "weld"), Qt::Key_Return);
    QVERIFY(real.settled());
    QVERIFY(!welds->isHidden());
    for (auto* button : welds->findChildren<QPushButton*>())
      if (button->text().remove(u'&') == u"Add weld") button->click();
    QVERIFY(real.settled());
    QCOMPARE(welds->welds(), std::size_t{1});
    QVERIFY(type(real, welds->form(0), "number", QStringLiteral("W-9")));
    QCOMPARE(job(real).welds[0].number, std::string("W-9"));
  }

  void every_key_that_the_manual_lists_has_a_field() {
    QFile manual(QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/resources/manual/keys.md"));
    QVERIFY(manual.open(QIODevice::ReadOnly));
    RealWindow real;
    QVERIFY(open(real));
    heat(real)->addBand()->click();
    QVERIFY(real.settled());
    QString table;
    int keys = 0;
    for (const QString& line : QString::fromUtf8(manual.readAll()).split(u'\n')) {
      if (line.startsWith(u'#')) table = line.section(QStringLiteral("Job: "), 1).remove(u'[').remove(u']');
      const KeyForm* form = table == u"composition" || table == u"qualified" || table == u"hydrogen"
                                ? heat(real)->form(table.toStdString())
                            : table == u"band" ? heat(real)->band(0)
                                               : nullptr;
      const QString key = line.section(u'|', 1, 1).remove(u'*').trimmed();
      if (!form || !key.startsWith(u'`')) continue;
      ++keys;
      QVERIFY2(form->has(key.mid(1, key.size() - 2).toStdString()), qPrintable(table + u' ' + key));
    }
    QCOMPARE(keys, 9 + 6 + 10 + 3);
  }
};

QTEST_MAIN(JobHeatFormTest)
#include "job_heat_form_test.moc"
