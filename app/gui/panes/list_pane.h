// SPDX-License-Identifier: GPL-3.0-or-later
// One list of the report on the screen: tells which line was chosen, says so when there is none.
#pragma once

#include <QTreeView>

#include "app/gui/panes/report_list.h"

namespace soakwright::gui {

class ListPane : public QTreeView {
  Q_OBJECT

 public:
  ListPane(const QString& name, QWidget* parent = nullptr);

  void setContent(ListContent content);
  void setColours(const ChartColours& colours) { model_->setColours(colours); }
  /// Marks the line that leads to `index`; none: no line is marked. Emits no signal.
  void mark(std::optional<std::size_t> index);
  /// Chooses the next line with `text` in one of its cells, whatever the case of its letters: from the
  /// current line on (0), behind it (1) or before it (-1), and on from the other end. False where there is
  /// none.
  bool find(const QString& text, int step);
  [[nodiscard]] const ReportListModel& lines() const { return *model_; }

 signals:
  void chosen(std::size_t index);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  /// Ctrl+C copies the chosen lines, all where none is chosen, with their headers.
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void tell(const QModelIndex& line);
  ReportListModel* model_;
  bool marking_ = false;
  bool telling_ = false;
};

}  // namespace soakwright::gui
