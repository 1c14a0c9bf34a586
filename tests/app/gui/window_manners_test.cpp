// SPDX-License-Identifier: GPL-3.0-or-later
// Manners of a desktop program: it fits a small screen, can be read in light and dark, is reached by keyboard
// and by a screen reader, and speaks the same in every locale and time zone.
//
// Contrast: WCAG 2.1, success criteria 1.4.3 (text, 4.5:1) and 1.4.11 (signs, 3:1); its relative luminance.

#include <QAccessible>
#include <QAction>
#include <QLineEdit>
#include <QListWidget>
#include <QLocale>
#include <QTabBar>
#include <QTabWidget>
#include <QTextBrowser>
#include <QTreeView>
#include <cmath>
#include <ctime>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/panes/channel_pane.h"
#include "app/gui/panes/forms/key_form.h"
#include "app/gui/panes/forms/stage_card.h"
#include "app/gui/panes/job_pane.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/panes/procedure_pane.h"
#include "app/gui/panes/start_page.h"
#include "app/gui/parts/manual_window.h"
#include "app/gui/parts/summary_bar.h"
#include "app/gui/verdict_sign.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

namespace {

double linear(double part) { return part <= 0.04045 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4); }

double luminance(const QColor& c) {
  return 0.2126 * linear(c.redF()) + 0.7152 * linear(c.greenF()) + 0.0722 * linear(c.blueF());
}

double contrast(const QColor& a, const QColor& b) {
  const double x = luminance(a) + 0.05;
  const double y = luminance(b) + 0.05;
  return std::max(x, y) / std::min(x, y);
}

QPalette light_palette() {
  QPalette p;
  p.setColor(QPalette::Base, Qt::white);
  p.setColor(QPalette::AlternateBase, QColor(0xf4, 0xf5, 0xf6));
  p.setColor(QPalette::Window, QColor(0xef, 0xf0, 0xf1));
  p.setColor(QPalette::Text, QColor(0x23, 0x26, 0x29));
  p.setColor(QPalette::WindowText, QColor(0x23, 0x26, 0x29));
  return p;
}

QPalette dark_palette() {
  QPalette p;
  p.setColor(QPalette::Base, QColor(0x1d, 0x21, 0x26));
  p.setColor(QPalette::AlternateBase, QColor(0x22, 0x27, 0x2d));
  p.setColor(QPalette::Window, QColor(0x2a, 0x2f, 0x36));
  p.setColor(QPalette::Text, QColor(0xe6, 0xe9, 0xec));
  p.setColor(QPalette::WindowText, QColor(0xe6, 0xe9, 0xec));
  return p;
}

bool takes_tab(const QWidget* widget) {
  return widget->isVisible() && widget->isEnabled() && (widget->focusPolicy() & Qt::TabFocus) != 0;
}

}  // namespace

class MannersTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString log_, procedure_, job_;

 private slots:
  void initTestCase() {
    const made::Case files = made::drum_case(files_.path(), made::run_with_dip());
    log_ = files.log;
    procedure_ = files.procedure;
    job_ = files.job;
  }

  void every_page_fits_1024_by_700() {
    RealWindow real;
    const auto fits = [&real](const char* what) {
      real.window.resize(1024, 700);
      QTest::qWait(20);
      const QSize least = real.window.minimumSizeHint();
      QVERIFY2(
          least.width() <= 1024 && least.height() <= 700,
          qPrintable(
              QStringLiteral("%1: %2 x %3").arg(QLatin1String(what)).arg(least.width()).arg(least.height())));
      QCOMPARE(real.window.size(), QSize(1024, 700));
    };
    fits("start page");
    QVERIFY(real.open({job_}));
    for (const char* page : {"Chart", "Import settings", "Job", "Procedure"}) {
      real.action(QLatin1String(page))->trigger();
      fits(page);
    }
  }

  void the_chart_has_more_than_half_of_a_window_of_1280_by_800() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    QTest::qWait(20);
    QCOMPARE(real.window.size(), QSize(1280, 800));
    const int height = real.part<ChartPane>()->height();
    QVERIFY2(height >= 0.55 * 800, qPrintable(QString::number(height)));
  }

  void signs_and_words_stand_out_in_both_themes() {
    for (const QPalette& palette : {light_palette(), dark_palette()}) {
      const ChartColours colours = ChartColours::of(palette);
      for (const QPalette::ColorRole ground : {QPalette::Base, QPalette::AlternateBase, QPalette::Window}) {
        const QColor behind = palette.color(ground);
        for (const Sign sign : {Sign::met, Sign::not_met, Sign::inconclusive, Sign::note}) {
          // The words of a verdict have the colour of its sign.
          const double found = contrast(colour_of(sign, colours), behind);
          QVERIFY2(found >= 4.5, qPrintable(QStringLiteral("%1 on %2: %3")
                                                .arg(colour_of(sign, colours).name(), behind.name())
                                                .arg(found)));
        }
        QVERIFY(contrast(colours.ink, behind) >= 4.5);
        QVERIFY2(contrast(colours.faint_ink, behind) >= 4.5,
                 qPrintable(QString::number(contrast(colours.faint_ink, behind))));
      }
      for (std::size_t n = 0; n < 8; ++n)
        QVERIFY(contrast(colours.trace(n, ChartTrace::Role::evaluated).color(), colours.background) >= 3.0);
      QVERIFY(contrast(colours.range_edge, colours.background) >= 3.0);
      QVERIFY(contrast(colours.evidence, colours.background) >= 3.0);
      // Words on the segments below the chart.
      for (const auto kind : {ChartSegment::Kind::heat, ChartSegment::Kind::hold, ChartSegment::Kind::cool,
                              ChartSegment::Kind::idle, ChartSegment::Kind::period})
        QVERIFY(contrast(colours.ink, colours.of_segment(kind)) >= 4.5);
    }
  }

  void everything_that_takes_the_focus_has_a_name_and_a_role() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    for (const char* page : {"Chart", "Import settings", "Job", "Procedure"}) {
      real.action(QLatin1String(page))->trigger();
      QTest::qWait(20);
      for (QWidget* widget : real.window.findChildren<QWidget*>()) {
        if (!takes_tab(widget)) continue;
        QAccessibleInterface* face = QAccessible::queryAccessibleInterface(widget);
        QVERIFY(face);
        const QString name = face->text(QAccessible::Name);
        const QString what = QStringLiteral("%1: %2 %3")
                                 .arg(QLatin1String(page), QLatin1String(widget->metaObject()->className()),
                                      widget->objectName());
        QVERIFY2(!name.isEmpty() || qobject_cast<QTabBar*>(widget) || qobject_cast<QTabWidget*>(widget),
                 qPrintable(what));
        QVERIFY2(face->role() != QAccessible::NoRole, qPrintable(what));
      }
    }
  }

  void tab_reaches_every_field_of_a_page_and_comes_back() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    for (const char* page : {"Chart", "Job", "Procedure"}) {
      real.action(QLatin1String(page))->trigger();
      real.window.activateWindow();
      real.part<SummaryBar>()->setFocus();
      QSet<QWidget*> wanted;
      for (QWidget* widget : real.window.findChildren<QWidget*>())
        if (takes_tab(widget) && !widget->focusProxy() && widget->window() == &real.window)
          wanted.insert(widget);
      QVERIFY(wanted.size() > 3);
      QSet<QWidget*> seen;
      QWidget* now = *wanted.begin();
      now->setFocus(Qt::TabFocusReason);
      for (int step = 0; step < 400; ++step) {
        QWidget* focus = QApplication::focusWidget();
        // A label with a link in it takes one Tab for itself and one for the link.
        if (!focus || (seen.contains(focus) && focus != now)) break;
        seen.insert(focus);
        now = focus;
        QTest::keyClick(focus, Qt::Key_Tab);
      }
      QStringList missed;
      for (QWidget* widget : wanted - seen)
        missed.append(QString::fromLatin1(widget->metaObject()->className()) + u' ' +
                      widget->accessibleName() + widget->objectName());
      QVERIFY2(missed.isEmpty(), qPrintable(QLatin1String(page) + QStringLiteral(": ") + missed.join(u'\n')));
    }
  }

  void f1_shows_the_page_about_what_has_the_focus() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    const auto page_for = [&real](QWidget* part) {
      real.window.activateWindow();
      part->setFocus();
      real.action(QStringLiteral("Manual"))->trigger();
      auto* manual = real.window.findChild<ManualWindow*>();
      const QString page = manual->page();
      const bool has_text = manual->text()->toPlainText().size() > 200;
      manual->hide();
      return has_text ? page : QStringLiteral("no text: ") + page;
    };
    QCOMPARE(page_for(real.part<ChartPane>()), QStringLiteral("measurements.md"));
    QCOMPARE(page_for(real.part<ListPane>(QStringLiteral("Requirements"))), QStringLiteral("verdicts.md"));
    // The channels beside the chart, and the tabs themselves.
    QCOMPARE(page_for(real.part<ChannelPane>()->findChild<QTreeView*>()), QStringLiteral("measurements.md"));
    for (QTabWidget* tabs : real.window.findChildren<QTabWidget*>())
      for (int tab = 0; tab < tabs->count(); ++tab) {
        tabs->setCurrentIndex(tab);
        QVERIFY2(page_for(tabs->tabBar()) != QStringLiteral("README.md"), qPrintable(tabs->tabText(tab)));
      }
    real.action(QStringLiteral("Job"))->trigger();
    QCOMPARE(page_for(real.part<JobPane>()->field("", "client")), QStringLiteral("formats.md"));
  }

  void samples_on_the_start_page_are_whole_cases() {
    RealWindow real;
    auto* samples = real.part<QListWidget>(QStringLiteral("Samples"));
    QVERIFY(samples->isVisible());
    QVERIFY(samples->count() >= 5);
    for (int row = 0; row < samples->count(); ++row) {
      emit samples->itemActivated(samples->item(row));
      QVERIFY(real.settled());
      QVERIFY2(real.window.session().open().analysis.verdicts, qPrintable(samples->item(row)->text()));
    }
  }

  void numbers_and_times_are_the_same_in_germany() {
    const QLocale before = QLocale();
    QLocale::setDefault(QLocale(QLocale::German, QLocale::Germany));
    qputenv("TZ", "Asia/Kolkata");
    tzset();
    {
      RealWindow real;
      QVERIFY(real.open({job_}));
      KeyForm* heat = real.part<ProcedurePane>()->stages()[0]->form();
      heat->line("rate_max")->setText(QStringLiteral("90.5"));
      QTest::keyClick(heat->line("rate_max"), Qt::Key_Return);
      QVERIFY(real.settled());
      QVERIFY(real.window.session().procedureText().find("rate_max = 90.5\n") != std::string::npos);
      QCOMPARE(real.part<SummaryBar>()->word(), QStringLiteral("Not met (not saved)"));
      const Report& report = *real.window.session().report();
      QVERIFY(report.chart.begin_s == 0.0);
      QCOMPARE(QString::fromStdString(real.window.session().open().analysis.record->moment_text(0.0)),
               QStringLiteral("2031-04-02 06:00:00"));
      const auto& lines = real.part<ListPane>(QStringLiteral("Requirements"))->lines().content().lines;
      bool limit = false;
      for (const ListLine& line : lines)
        for (const QString& cell : line.cells) limit = limit || cell.contains(QStringLiteral("90.5"));
      QVERIFY(limit);
    }
    QLocale::setDefault(before);
    qunsetenv("TZ");
    tzset();
  }
};

QTEST_MAIN(MannersTest)
#include "window_manners_test.moc"
