// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/texts/budget_text.h"

#include <QStringList>

#include "app/gui/texts/window_text.h"

namespace soakwright::gui {
namespace {

QString row(const QStringList& cells, const char* tag) {
  QString html;
  for (const QString& cell : cells)
    html +=
        QStringLiteral("<%1 align='left' style='padding-right:10px'>%2</%1>").arg(QLatin1String(tag), cell);
  return QStringLiteral("<tr>%1</tr>").arg(html);
}

/// The figures at the table's temperatures in one cell: the card is narrow. What is the same at all is said
/// once.
QString parallel_for(const std::vector<std::string>& figures) {
  QStringList texts;
  for (const std::string& figure : figures) texts << html_text(figure);
  if (texts.count(texts.value(0)) == texts.size()) return texts.value(0);
  return texts.join(QStringLiteral(" / "));
}

}  // namespace

QString budgetText(const BudgetTable& table, TemperatureUnit unit) {
  const QString degree = unit == TemperatureUnit::fahrenheit ? QStringLiteral("°F") : QStringLiteral("°C");
  QString html = row({tr("In %1").arg(degree), tr("±a or step q"), tr("u = a/√3, q/√12")}, "th");
  for (const BudgetTable::Row& line : table.rows)
    html += row({tr("%1: %2").arg(html_text(line.name), html_text(line.source)), html_text(line.half_width),
                 parallel_for(line.standard)},
                "td");
  html += row({tr("<b>U = 2·√(Σu²)</b>"), {}, QStringLiteral("<b>%1</b>").arg(parallel_for(table.expanded))},
              "td");
  return QStringLiteral(
             "<p style='margin:8px 0 2px 0'><b>%1</b></p><p style='margin:2px 0'>%2</p>"
             "<table cellspacing='0' cellpadding='2'>%3</table><p style='margin:2px 0'>%4</p>")
      .arg(tr("Uncertainty budget of %1").arg(html_text(table.channels)),
           tr("At %1").arg(parallel_for(table.columns)), html,
           tr("U of a rate: %1").arg(html_text(table.rate)));
}

}  // namespace soakwright::gui
