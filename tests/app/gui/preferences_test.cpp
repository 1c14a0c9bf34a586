// SPDX-License-Identifier: GPL-3.0-or-later
// What a person prefers is kept, taken at the next start, and shown at once.

#include <QComboBox>
#include <QLineEdit>
#include <QSettings>
#include <QSpinBox>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/looks.h"
#include "app/gui/parts/preferences_dialog.h"
#include "tests/app/gui/dialog_answers.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class PreferencesTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  made::Case case_;

  static std::function<bool(QWidget*)> choose(const QString& box, const QString& text) {
    return [box, text](QWidget* dialog) {
      for (auto* found : dialog->findChildren<QComboBox*>())
        if (found->accessibleName() == box) found->setCurrentText(text);
      buttonIn(dialog, QStringLiteral("OK"))->click();
      return true;
    };
  }

 private slots:
  void initTestCase() { case_ = made::drum_case(files_.path()); }
  void cleanup() { apply_looks({}); }

  void every_preference_is_kept_as_it_was_set() {
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("gui.ini"));
    QVERIFY(SavedSettings(file).preferences() == Preferences{});
    for (const Preferences& wanted :
         {Preferences{Preferences::Colours::dark, 130, TemperatureUnit::fahrenheit, TimeOrigin::hold,
                      QStringLiteral("/keys/roots.pem")},
          Preferences{Preferences::Colours::light, 80, TemperatureUnit::celsius, TimeOrigin::record, {}},
          Preferences{}}) {
      SavedSettings(file).keepPreferences(wanted);
      QVERIFY(SavedSettings(file).preferences() == wanted);
      PreferencesDialog dialog(wanted);
      QVERIFY(dialog.preferences() == wanted);
    }
  }

  void what_is_not_known_is_as_at_the_first_start() {
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("gui.ini"));
    QSettings(file, QSettings::IniFormat)
        .setValue(QStringLiteral("preferences/colours"), QStringLiteral("mauve"));
    QSettings(file, QSettings::IniFormat).setValue(QStringLiteral("preferences/text-percent"), 4000);
    const Preferences kept = SavedSettings(file).preferences();
    QVERIFY(kept.colours == Preferences::Colours::desktop);
    QCOMPARE(kept.text_percent, Preferences::kMostText_percent);
  }

  void fahrenheit_that_is_preferred_is_there_at_once_and_at_the_next_start() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    QVERIFY(real.window.session().report()->unit == TemperatureUnit::celsius);
    answer(choose(QStringLiteral("Temperatures"), QStringLiteral("°F")));
    real.action(QStringLiteral("Preferences…"))->trigger();
    QVERIFY(real.window.session().report()->unit == TemperatureUnit::fahrenheit);
    // Another preference leaves what the View menu says now.
    real.action(QStringLiteral("°C"))->trigger();
    answer(choose(QStringLiteral("Colours"), QStringLiteral("Dark")));
    real.action(QStringLiteral("Preferences…"))->trigger();
    QVERIFY(real.window.session().report()->unit == TemperatureUnit::celsius);
    QTRY_VERIFY(real.window.palette().color(QPalette::Base).lightness() < 80);
    MainWindow again(real.memory);
    again.session().openFiles({case_.job});
    QVERIFY(QTest::qWaitFor([&] { return again.session().report() != nullptr; }, 10'000));
    QVERIFY(again.session().report()->unit == TemperatureUnit::fahrenheit);
  }

  void larger_text_is_larger_everywhere_and_leaves_the_chart_its_room() {
    RealWindow real;
    QVERIFY(real.open({case_.job}));
    auto* chart = real.part<ChartPane>();
    const int before = chart->fontMetrics().height();
    answer([](QWidget* dialog) {
      dialog->findChild<QSpinBox*>()->setValue(150);
      buttonIn(dialog, QStringLiteral("OK"))->click();
      return true;
    });
    real.action(QStringLiteral("Preferences…"))->trigger();
    QTRY_VERIFY(chart->fontMetrics().height() >= 1.3 * before);
    QVERIFY2(chart->height() >= 300, qPrintable(QString::number(chart->height())));
  }
};

QTEST_MAIN(PreferencesTest)
#include "preferences_test.moc"
