// SPDX-License-Identifier: GPL-3.0-or-later
// The channels as a Qt model: the legend of the chart, what is shown of it, and each reading at the pointer.
#pragma once

#include <QAbstractTableModel>
#include <QPen>
#include <memory>
#include <optional>
#include <vector>

#include "app/gui/parts/pointer_reading.h"
#include "core/report/report.h"

namespace soakwright::gui {

class ChannelListModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  using QAbstractTableModel::QAbstractTableModel;

  void setReport(std::shared_ptr<const Report> report);
  void setPens(std::vector<QPen> pens);
  void setVisible(std::vector<bool> visible);
  void setReading(std::optional<PointerReading> reading);
  /// What is given at the pointer beside the temperature.
  struct Figures {
    bool rates = false, differences = false;
    bool operator==(const Figures&) const = default;
  };
  void setFigures(const Figures& figures);
  [[nodiscard]] std::optional<std::size_t> channelAt(int row) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

 signals:
  void visibleWanted(std::size_t channel, bool visible);

 private:
  enum class Column { name, reading, rate, difference };
  [[nodiscard]] Column columnAt(int column) const;
  [[nodiscard]] static QString headerTip(Column column);
  [[nodiscard]] QVariant figure(Column column, std::size_t channel) const;

  std::shared_ptr<const Report> report_;
  Figures figures_;
  std::vector<QPen> pens_;  ///< by trace
  std::vector<bool> visible_;
  std::optional<PointerReading> reading_;
};

}  // namespace soakwright::gui
