// SPDX-License-Identifier: GPL-3.0-or-later
// Where the job says that each thermocouple sits: the report's sketch in the window's colours, and in words
// what is not on it.
#pragma once

#include <QWidget>
#include <memory>

#include "core/report/report.h"

class QLabel;

namespace soakwright::gui {

class PlacesCanvas;

class ThermocouplePlaces : public QWidget {
 public:
  explicit ThermocouplePlaces(QWidget* parent = nullptr);
  ~ThermocouplePlaces() override;

  /// Null: no record is open, or no job.
  void show(const std::shared_ptr<const Report>& report, const std::shared_ptr<const Job>& job);
  /// The drawing; hidden where no place tells thermocouples apart.
  [[nodiscard]] QWidget* sketch() const;
  /// Which number is which thermocouple, and which are not on the sketch.
  [[nodiscard]] QString words() const;

 private:
  PlacesCanvas* canvas_;
  QLabel* words_;
};

}  // namespace soakwright::gui
