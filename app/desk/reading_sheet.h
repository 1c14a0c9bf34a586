// How the file was read, beside the file's own first lines: nothing that was made of it is hidden from the reader.
// The order of day and month can be settled here; the record is then read again.
#pragma once

#include <QWidget>
#include <optional>

#include "app/desk/open_case.h"
#include "app/desk/verdict_sign.h"

class QComboBox;
class QLabel;

namespace soakwright::desk {

class ListPane;

class ReadingSheet : public QWidget {
  Q_OBJECT

 public:
  explicit ReadingSheet(QWidget* parent = nullptr);

  void show(const OpenCase& open);
  void setColours(const ChartColours& colours);
  [[nodiscard]] const ListPane& lines() const { return *lines_; }
  [[nodiscard]] const ListPane& settings() const { return *settings_; }
  [[nodiscard]] const ListPane& columns() const { return *columns_; }
  [[nodiscard]] QComboBox* dates() const { return dates_; }

 signals:
  void datesChosen(std::optional<soakwright::DateOrder> dates);

 private:
  QLabel* file_;
  ListPane* lines_;
  ListPane* settings_;
  ListPane* columns_;
  QComboBox* dates_;
  bool showing_ = false;
};

}  // namespace soakwright::desk
