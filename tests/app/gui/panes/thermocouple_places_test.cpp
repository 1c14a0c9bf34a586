// SPDX-License-Identifier: GPL-3.0-or-later
// The sketch on the job page: drawn from what the job says, after every edit, and a line says what to give
// where there is nothing to draw.

#include "app/gui/panes/thermocouple_places.h"

#include <QPlainTextEdit>
#include <QPushButton>

#include "app/gui/panes/job_pane.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class ThermocouplePlacesTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  made::Case case_;

  static ThermocouplePlaces* places(RealWindow& real) { return real.part<JobPane>()->places(); }
  static QImage drawn(RealWindow& real) { return places(real)->sketch()->grab().toImage(); }
  /// Replaces a part of the job's text and applies it.
  static bool edit(RealWindow& real, const QString& from, const QString& to) {
    auto* text = real.part<JobPane>()->text();
    text->setPlainText(text->toPlainText().replace(from, to));
    for (auto* button : real.part<JobPane>()->findChildren<QPushButton*>())
      if (button->text().remove(u'&') == u"Apply text") button->click();
    return real.settled() && real.window.session().problems().empty();
  }
  bool openWith(RealWindow& real, const QString& of_tc1, const QString& of_tc2) {
    QFile file(case_.job);
    if (!file.open(QIODevice::ReadOnly)) return false;
    QString text = QString::fromUtf8(file.readAll());
    text.replace(QStringLiteral("role = \"control\"\n"), QStringLiteral("role = \"control\"\n") + of_tc1);
    text.replace(QStringLiteral("column = \"TC2\"\n"), QStringLiteral("column = \"TC2\"\n") + of_tc2);
    const QString path = made::write(files_.path(), QStringLiteral("placed.toml"), text);
    const bool opened = real.open({path});
    real.action(QStringLiteral("Job"))->trigger();
    return opened;
  }

 private slots:
  void initTestCase() { case_ = made::drum_case(files_.path()); }

  void without_places_a_line_says_what_to_give() {
    RealWindow real;
    QVERIFY(openWith(real, {}, {}));
    QVERIFY(places(real)->sketch()->isHidden());
    QVERIFY2(places(real)->words().contains(QStringLiteral("`position` or `angle`")),
             qPrintable(places(real)->words()));
    QVERIFY(edit(real, QStringLiteral("column = \"TC2\"\n"),
                 QStringLiteral("column = \"TC2\"\nangle = \"90 deg\"\n")));
    QVERIFY(places(real)->sketch()->isVisible());
    real.window.session().edits().undo();
    QVERIFY(real.settled());
    QVERIFY(places(real)->sketch()->isHidden());
  }

  void one_position_for_all_says_that_others_are_needed() {
    RealWindow real;
    QVERIFY(openWith(real, QStringLiteral("position = \"1 m\"\n"), QStringLiteral("position = \"1 m\"\n")));
    QVERIFY(places(real)->sketch()->isHidden());
    QVERIFY2(places(real)->words().startsWith(QStringLiteral("Every position given is the same")),
             qPrintable(places(real)->words()));
  }

  void those_without_a_place_are_listed() {
    RealWindow real;
    QVERIFY(
        openWith(real, QStringLiteral("position = \"0 m\"\n"), QStringLiteral("position = \"300 mm\"\n")));
    QCOMPARE(places(real)->words(),
             QStringLiteral("1 TC1 (control) · 2 TC2\nNot on the sketch, no place given: TC3, TC4"));
  }

  void the_sketch_follows_position_angle_role_and_zone() {
    RealWindow real;
    QVERIFY(openWith(real, QStringLiteral("position = \"0 m\"\nangle = \"0 deg\"\n"),
                     QStringLiteral("position = \"300 mm\"\nangle = \"90 deg\"\n")));
    QImage before = drawn(real);
    for (const auto& [from, to] : std::initializer_list<std::pair<const char*, const char*>>{
             {"\"300 mm\"", "\"400 mm\""},
             {"\"90 deg\"", "\"180 deg\""},
             {"\"TC2\"\n", "\"TC2\"\nrole = \"air\"\n"}}) {
      QVERIFY(edit(real, QLatin1String(from), QLatin1String(to)));
      const QImage after = drawn(real);
      QVERIFY2(after != before, to);
      before = after;
    }
    QVERIFY(places(real)->words().contains(QStringLiteral("2 TC2 (air)")));
    QVERIFY(edit(real, QStringLiteral("role = \"air\"\n"), QStringLiteral("zone = \"edge\"\n")));
    QVERIFY2(places(real)->words().contains(QStringLiteral("2 TC2 (edge)")),
             qPrintable(places(real)->words()));
  }

  void the_bands_of_the_job_are_drawn_along_the_work() {
    RealWindow real;
    QVERIFY(
        openWith(real, QStringLiteral("position = \"0 m\"\n"), QStringLiteral("position = \"300 mm\"\n")));
    const QImage before = drawn(real);
    auto* text = real.part<JobPane>()->text();
    QVERIFY(edit(real, text->toPlainText(),
                 text->toPlainText() + QStringLiteral("\n[[band]]\ndiameter = \"508 mm\"\nwall = \"38 mm\"\n"
                                                      "soak_band = \"150 mm\"\n")));
    const QImage with_soak_band = drawn(real);
    QVERIFY(with_soak_band != before);
    QVERIFY(
        edit(real, QStringLiteral("\"150 mm\"\n"), QStringLiteral("\"150 mm\"\nheated_band = \"500 mm\"\n")));
    QVERIFY(drawn(real) != with_soak_band);
  }

  void in_a_dark_window_the_sketch_is_dark() {
    RealWindow real;
    QVERIFY(openWith(real, QStringLiteral("angle = \"0 deg\"\n"), QStringLiteral("angle = \"90 deg\"\n")));
    QPalette dark;
    dark.setColor(QPalette::Base, QColor(0x1d, 0x21, 0x26));
    dark.setColor(QPalette::Window, QColor(0x2a, 0x2f, 0x36));
    dark.setColor(QPalette::Text, Qt::white);
    dark.setColor(QPalette::WindowText, Qt::white);
    real.window.setPalette(dark);
    const QImage picture = drawn(real);
    int light = 0;
    int darkest = 255;
    for (int y = 0; y < picture.height(); ++y)
      for (int x = 0; x < picture.width(); ++x) {
        const int level = qGray(picture.pixel(x, y));
        light += level > 128 ? 1 : 0;
        darkest = std::min(darkest, level);
      }
    QVERIFY2(darkest < 64 && light > 0, qPrintable(QStringLiteral("%1 %2").arg(darkest).arg(light)));
    QVERIFY2(light < picture.width() * picture.height() / 4, qPrintable(QString::number(light)));
  }
};

QTEST_MAIN(ThermocouplePlacesTest)
#include "thermocouple_places_test.moc"
