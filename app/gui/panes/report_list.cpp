// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/report_list.h"

#include <QFont>
#include <algorithm>
#include <utility>

#include "app/gui/parts/plain_tip.h"

namespace soakwright::gui {
namespace {

constexpr int kRowSignSize = 16;

}  // namespace

void ReportListModel::setContent(ListContent content) {
  beginResetModel();
  content_ = std::move(content);
  endResetModel();
}

void ReportListModel::setColours(const ChartColours& colours) {
  colours_ = colours;
  if (rowCount() > 0) emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

bool ReportListModel::columnEmpty(int column) const {
  return std::all_of(content_.lines.begin(), content_.lines.end(),
                     [column](const ListLine& line) { return line.cells.value(column).isEmpty(); });
}

std::optional<int> ReportListModel::lineOf(std::size_t index) const {
  const auto line = std::find_if(content_.lines.begin(), content_.lines.end(),
                                 [index](const ListLine& one) { return !one.heading && one.index == index; });
  if (line == content_.lines.end()) return std::nullopt;
  return static_cast<int>(line - content_.lines.begin());
}

int ReportListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(content_.lines.size());
}

int ReportListModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(content_.headers.size());
}

QVariant ReportListModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const ListLine& line = content_.lines[static_cast<std::size_t>(index.row())];
  const QString& cell = line.cells.value(index.column());
  const bool number =
      std::find(content_.numbers.begin(), content_.numbers.end(), index.column()) != content_.numbers.end();
  switch (role) {
    case Qt::DisplayRole:
      return cell;
    case Qt::ToolTipRole:
      return cell.size() > 24 ? QVariant(plain_tip(cell)) : QVariant();
    case Qt::AccessibleTextRole:
      return QStringLiteral("%1: %2").arg(content_.headers.value(index.column()), cell);
    case Qt::DecorationRole:
      if (index.column() == 0 && line.sign) return sign_icon(*line.sign, colours_, kRowSignSize);
      return {};
    case Qt::FontRole:
      if (line.heading || (index.column() == 0 && line.sign && *line.sign == Sign::not_met)) {
        QFont bold;
        bold.setBold(true);
        return bold;
      }
      return {};
    case Qt::ForegroundRole:
      if (index.column() == 0 && line.sign) return colour_of(*line.sign, colours_);
      return {};
    case Qt::TextAlignmentRole:
      return static_cast<int>(Qt::AlignVCenter | (number ? Qt::AlignRight : Qt::AlignLeft));
    case kIndexRole:
      return static_cast<qulonglong>(line.index);
    default:
      return {};
  }
}

Qt::ItemFlags ReportListModel::flags(const QModelIndex& index) const {
  if (!index.isValid()) return {};
  const bool heading = content_.lines[static_cast<std::size_t>(index.row())].heading;
  return heading ? Qt::ItemIsEnabled : Qt::ItemIsEnabled | Qt::ItemIsSelectable;
}

QVariant ReportListModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  if (role == Qt::DisplayRole) return content_.headers.value(section);
  if (role == Qt::TextAlignmentRole) {
    const bool number =
        std::find(content_.numbers.begin(), content_.numbers.end(), section) != content_.numbers.end();
    return static_cast<int>(Qt::AlignVCenter | (number ? Qt::AlignRight : Qt::AlignLeft));
  }
  return {};
}

}  // namespace soakwright::gui
