// SPDX-License-Identifier: GPL-3.0-or-later
// A list of the report as a Qt model: cells of text, a sign before the first, and the index that leads back.
#pragma once

#include <QAbstractTableModel>
#include <QStringList>
#include <optional>
#include <vector>

#include "app/gui/verdict_sign.h"

namespace soakwright::gui {

struct ListLine {
  QStringList cells;
  std::optional<Sign> sign;
  std::size_t index = 0;  ///< into the report's list
  bool heading = false;   ///< of a group: leads nowhere
};

struct ListContent {
  QStringList headers;
  std::vector<int> numbers;  ///< columns with figures, set to the right
  std::vector<ListLine> lines;
  QString when_empty;  ///< what an empty list says
  int stretch = -1;    ///< the column that takes what room is left
};

class ReportListModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  static constexpr int kIndexRole = Qt::UserRole;

  using QAbstractTableModel::QAbstractTableModel;

  void setContent(ListContent content);
  void setColours(const ChartColours& colours);
  [[nodiscard]] const ListContent& content() const { return content_; }
  /// A column without a word in any line.
  [[nodiscard]] bool columnEmpty(int column) const;
  /// The line that leads to `index`.
  [[nodiscard]] std::optional<int> lineOf(std::size_t index) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  ListContent content_;
  ChartColours colours_;
};

}  // namespace soakwright::gui
