// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/texts/heat_text.h"

#include <QStringList>
#include <algorithm>

#include "app/gui/texts/window_text.h"

namespace soakwright::gui {
namespace {

QString heat_paragraph(const QString& text) {
  return QStringLiteral("<p style='margin:2px 0'>%1</p>").arg(text);
}

/// "TC1: P 17.967; Hours at 590 °C 6.00"; figures with nothing to say are left out.
QString row_text(const FigureTable& table, const std::vector<std::string>& row) {
  QStringList figures;
  for (std::size_t i = 1; i < std::min(row.size(), table.columns.size()); ++i)
    if (!row[i].empty()) figures << html_text(table.columns[i]) + QLatin1Char(' ') + html_text(row[i]);
  return QStringLiteral("<b>%1</b>: %2").arg(html_text(row.front()), figures.join(QStringLiteral("; ")));
}

}  // namespace

QString figuresText(const FigureTable& table) {
  QString html = QStringLiteral("<p style='margin:8px 0 2px 0'><b>%1</b></p>").arg(html_text(table.title));
  for (const std::vector<std::string>& row : table.rows)
    if (!row.empty()) html += heat_paragraph(row_text(table, row));
  for (const LabelledText& fact : table.facts)
    html += heat_paragraph(QStringLiteral("%1: %2").arg(html_text(fact.name), html_text(fact.text)));
  for (const std::string& note : table.notes) html += heat_paragraph(html_text(note));
  return html;
}

}  // namespace soakwright::gui
