// SPDX-License-Identifier: GPL-3.0-or-later
// The list of findings with a filter, groups and its order above it.
#pragma once

#include <QWidget>
#include <memory>

#include "app/gui/panes/finding_groups.h"
#include "app/gui/panes/list_pane.h"

class QComboBox;
class QLineEdit;

namespace soakwright::gui {

class FindingPane : public QWidget {
  Q_OBJECT

 public:
  explicit FindingPane(QWidget* parent = nullptr);

  void show(std::shared_ptr<const Report> report);
  [[nodiscard]] ListPane* list() const { return list_; }
  [[nodiscard]] QLineEdit* filter() const { return filter_; }
  [[nodiscard]] QComboBox* groups() const { return groups_; }
  /// Its data are of FindingOrder.
  [[nodiscard]] QComboBox* order() const { return order_; }
  /// The findings as they are listed, from top to bottom.
  [[nodiscard]] std::vector<std::size_t> listed() const;

 signals:
  /// Other lines are listed.
  void filtered();

 private:
  void fill();

  std::shared_ptr<const Report> report_;
  QLineEdit* filter_;
  QComboBox* groups_;
  QComboBox* order_;
  ListPane* list_;
};

}  // namespace soakwright::gui
