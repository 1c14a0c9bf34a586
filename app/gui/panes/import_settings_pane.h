// SPDX-License-Identifier: GPL-3.0-or-later
// How the file was read, beside the file's own first lines: nothing that was made of it is hidden from the
// reader, and all of it can be settled here. Every change is emitted at once; the record is then read again.
#pragma once

#include <QWidget>
#include <vector>

#include "app/gui/panes/column_table.h"
#include "app/gui/panes/forms/setting_form.h"
#include "app/gui/session.h"
#include "app/gui/verdict_sign.h"

class QLabel;
class QPushButton;

namespace soakwright::gui {

class ListPane;

class ImportSettingsPane : public QWidget {
  Q_OBJECT

 public:
  explicit ImportSettingsPane(QWidget* parent = nullptr);

  void show(Session& session);
  void setColours(const ChartColours& colours);
  [[nodiscard]] const ListPane& lines() const { return *lines_; }
  [[nodiscard]] SettingForm* settings() const { return settings_; }
  [[nodiscard]] ColumnTable* columns() const { return columns_; }
  [[nodiscard]] QString message() const;
  /// Which file it is, as far as there is room.
  [[nodiscard]] QString fileLine() const;
  bool eventFilter(QObject* watched, QEvent* event) override;

 signals:
  void changed(const std::vector<soakwright::JobChange>& changes);
  void undoWanted();
  void writeWanted();
  void dropWanted();

 private:
  void fitFileLine();

  QLabel* file_;
  QString file_line_;
  QLabel* message_;
  ListPane* lines_;
  SettingForm* settings_;
  ColumnTable* columns_;
  QPushButton* undo_;
  QPushButton* write_;
  QPushButton* drop_;
};

}  // namespace soakwright::gui
