// SPDX-License-Identifier: GPL-3.0-or-later
// What the heat did, as the evidence card shows it.
#include "app/gui/texts/heat_text.h"

#include <QTest>

using namespace soakwright;

class HeatTextTest : public QObject {
  Q_OBJECT

 private slots:
  void everyFigureStandsUnderItsColumn() {
    FigureTable table;
    table.title = "Tempering over the whole record";
    table.facts = {{"Constant C", "20"}};
    table.columns = {"Thermocouple", "P", "Hours at 590 °C", "Temperature not known"};
    table.rows = {{"TC1", "at least 17.967", "6.00", "20 min"}, {"TC2 <b>", "17.951", "5.78", ""}};
    table.notes = {"P is that of the whole curve."};
    const QString html = gui::figuresText(table);
    QVERIFY(html.contains(QStringLiteral("Tempering over the whole record")));
    QVERIFY(html.contains(
        QStringLiteral("<b>TC1</b>: P at least 17.967; Hours at 590 °C 6.00; Temperature not known 20 min")));
    // A name from a file is text, and a figure that says nothing is left out.
    QVERIFY(html.contains(QStringLiteral("<b>TC2 &lt;b&gt;</b>: P 17.951; Hours at 590 °C 5.78</p>")));
    QVERIFY(html.contains(QStringLiteral("Constant C: 20")));
    QVERIFY(html.contains(QStringLiteral("P is that of the whole curve.")));
  }
};

QTEST_MAIN(HeatTextTest)
#include "heat_text_test.moc"
