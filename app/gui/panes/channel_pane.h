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
  void markTrace(std::optional<std::size_t> trace);
  [[nodiscard]] QTreeView* list() const { return list_; }
  [[nodiscard]] QString readingText() const;

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 signals:
  void visibleWanted(std::size_t channel, bool visible);
  void allWanted(bool visible);
  void traceChosen(std::optional<std::size_t> trace);
  void menuWanted(std::size_t trace, const QPoint& at);

 private:
  std::shared_ptr<const Report> report_;
  ChannelListModel* model_;
  QTreeView* list_;
  QLabel* moment_;
  QLabel* hottest_;
  QLabel* coldest_;
  QLabel* spread_;
  QPushButton* all_;
  QPushButton* none_;
  bool marking_ = false;
  bool telling_ = false;
};

}  // namespace soakwright::gui
