// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/table_copy.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QMimeData>
#include <algorithm>
#include <numeric>
#include <utility>

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

std::vector<int> all_rows(const QAbstractItemModel& list) {
  std::vector<int> rows(static_cast<std::size_t>(list.rowCount()));
  std::iota(rows.begin(), rows.end(), 0);
  return rows;
}

/// The headers, then the rows.
std::vector<QStringList> cells_of(const QAbstractItemModel& list, const std::vector<int>& rows) {
  std::vector<QStringList> all(1);
  for (int column = 0; column < list.columnCount(); ++column)
    all[0].append(list.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString());
  for (const int row : rows) {
    QStringList cells;
    for (int column = 0; column < list.columnCount(); ++column)
      cells.append(list.index(row, column).data(Qt::DisplayRole).toString());
    all.push_back(std::move(cells));
  }
  return all;
}

QString text_of(const std::vector<QStringList>& table) {
  QString text;
  for (const QStringList& cells : table) text += text_row(cells);
  return text;
}

}  // namespace

QString table_text(const QAbstractItemModel& list) { return text_of(cells_of(list, all_rows(list))); }

void copy_table(const QAbstractItemModel& list, const std::vector<int>& rows) {
  const auto table = cells_of(list, rows.empty() ? all_rows(list) : rows);
  QString html = QStringLiteral("<table>\n");
  for (const QStringList& cells : table)
    html += html_row(cells, &cells == table.data() ? QStringLiteral("th") : QStringLiteral("td"));
  auto* copied = new QMimeData;
  copied->setText(text_of(table));
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
