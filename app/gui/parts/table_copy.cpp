// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/table_copy.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QMimeData>
#include <algorithm>
#include <numeric>

namespace soakwright::gui {
namespace {

QString text_row(const QStringList& cells) {
  QStringList plain;
  for (QString cell : cells) plain.append(cell.replace(u'\t', u' ').replace(u'\n', u' '));
  return plain.join(u'\t') + u'\n';
}

QString html_row(const QStringList& cells, const QString& tag) {
  QString row = QStringLiteral("<tr>");
  for (const QString& cell : cells)
    row +=
        QStringLiteral("<%1>%2</%1>").arg(tag, cell.toHtmlEscaped().replace(u'\n', QStringLiteral("<br>")));
  return row + QStringLiteral("</tr>\n");
}

}  // namespace

void copy_table(const QAbstractItemModel& list, const std::vector<int>& rows) {
  std::vector<int> wanted = rows;
  if (wanted.empty()) {
    wanted.resize(static_cast<std::size_t>(list.rowCount()));
    std::iota(wanted.begin(), wanted.end(), 0);
  }
  QStringList cells;
  for (int column = 0; column < list.columnCount(); ++column)
    cells.append(list.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString());
  QString text = text_row(cells);
  QString html = QStringLiteral("<table>\n") + html_row(cells, QStringLiteral("th"));
  for (const int row : wanted) {
    cells.clear();
    for (int column = 0; column < list.columnCount(); ++column)
      cells.append(list.index(row, column).data(Qt::DisplayRole).toString());
    text += text_row(cells);
    html += html_row(cells, QStringLiteral("td"));
  }
  auto* copied = new QMimeData;
  copied->setText(text);
  copied->setHtml(html + QStringLiteral("</table>\n"));
  QGuiApplication::clipboard()->setMimeData(copied);
}

void copy_chosen_rows(const QAbstractItemModel& list, const QModelIndexList& chosen) {
  std::vector<int> rows;
  for (const QModelIndex& one : chosen) rows.push_back(one.row());
  std::sort(rows.begin(), rows.end());
  copy_table(list, rows);
}

}  // namespace soakwright::gui
