// SPDX-License-Identifier: GPL-3.0-or-later
// The channels beside the chart: shown or hidden, and what each reads at the pointer.
#pragma once

#include <QWidget>

#include "app/gui/panes/channel_list.h"

class QLabel;
class QPushButton;
class QTreeView;

namespace soakwright::gui {

class ChannelPane : public QWidget {
  Q_OBJECT

 public:
  explicit ChannelPane(QWidget* parent = nullptr);

  void setReport(std::shared_ptr<const Report> report);
  void setPens(std::vector<QPen> pens) { model_->setPens(std::move(pens)); }
  void setVisibleChannels(std::vector<bool> visible) { model_->setVisible(std::move(visible)); }
  /// Moment, hottest and coldest at the pointer; none: the pointer is not over the chart.
  void setReading(std::optional<PointerReading> reading);
  /// What is given there beside each temperature.
  void setFigures(const ChannelListModel::Figures& figures);
  void markTraces(const std::vector<std::size_t>& traces);
  /// The chosen ones, from top to bottom.
  [[nodiscard]] std::vector<std::size_t> chosen() const;
  [[nodiscard]] QTreeView* list() const { return list_; }
  [[nodiscard]] QString readingText() const;

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 signals:
  void visibleWanted(std::size_t channel, bool visible);
  void allWanted(bool visible);
  void tracesChosen(const std::vector<std::size_t>& traces);
  /// About the chosen channels, `trace` being the one under the pointer.
  void menuWanted(std::size_t trace, const QPoint& at);
  /// Which channels are to be shown together.
  void groupsWanted(const QPoint& at);

 private:
  void fitColumns();

  std::shared_ptr<const Report> report_;
  ChannelListModel* model_;
  QTreeView* list_;
  QLabel* moment_;
  QLabel* hottest_;
  QLabel* coldest_;
  QLabel* spread_;
  QPushButton* all_;
  QPushButton* none_;
  QPushButton* more_;
  bool marking_ = false;
  bool telling_ = false;
};

}  // namespace soakwright::gui
