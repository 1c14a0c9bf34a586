// SPDX-License-Identifier: GPL-3.0-or-later
// The previous records of the same welds, which count with the open one: each with its own chart,
// requirements, findings and file warnings. They are looked at here; settings and review belong to the open
// record.
#pragma once

#include <QDialog>
#include <memory>

#include "app/gui/open_case.h"

class QLabel;

namespace soakwright::gui {

class ChartPane;
class ChoiceBox;
class DetailPanel;
class ListPane;

class PreviousRecordsDialog : public QDialog {
  Q_OBJECT

 public:
  explicit PreviousRecordsDialog(QWidget* parent = nullptr);

  /// Those of the case, which must have some; the record that was looked at stays, where it is still there.
  void setCase(const OpenCase& open);
  [[nodiscard]] ChoiceBox* choice() const { return choice_; }
  [[nodiscard]] ChartPane* chart() const { return chart_; }
  [[nodiscard]] ListPane* requirements() const { return requirements_; }
  [[nodiscard]] ListPane* notices() const { return notices_; }

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void showRecord(int index);
  void colour();

  std::shared_ptr<const Report> report_;
  std::vector<std::shared_ptr<const TraceSet>> traces_;  ///< as report_->previous_records
  ChoiceBox* choice_;
  QLabel* verdict_;
  ChartPane* chart_;
  ListPane *requirements_, *findings_, *suspects_, *notices_;
  DetailPanel* card_;
};

}  // namespace soakwright::gui
