// SPDX-License-Identifier: GPL-3.0-or-later
// Ticks at round moments of the log's clock and at round temperatures of the report's unit, while the axes
// count seconds and Celsius.
//
// Only the chart's own .cpp files include this: it brings the plot library's header.
#pragma once

#include <memory>
#include <optional>

#include <qcustomplot.h>

#include "core/report/chart.h"

namespace soakwright::gui {

class ClockTicker : public QCPAxisTicker {
 public:
  /// Whose clock is shown; null: elapsed time from 0.
  void setRecord(std::shared_ptr<const Record> record) { record_ = std::move(record); }
  /// Elapsed time from this moment instead of the record's clock.
  void countFrom(std::optional<double> origin_s) { origin_s_ = origin_s; }

 protected:
  double getTickStep(const QCPRange& range) override;
  int getSubTickCount(double step) override;
  QVector<double> createTickVector(double step, const QCPRange& range) override;
  QVector<QString> createLabelVector(const QVector<double>& ticks, const QLocale& locale, QChar format,
                                     int precision) override;

 private:
  [[nodiscard]] const RecorderClock& clock() const;

  std::shared_ptr<const Record> record_;
  std::optional<double> origin_s_;
  double step_s_ = 3600.0;
};

/// Rates and differences: a factor to the unit, no offset.
class RateTicker : public QCPAxisTicker {
 public:
  void setUnit(TemperatureUnit unit) { unit_ = unit; }

 protected:
  double getTickStep(const QCPRange& range) override;
  QString getTickLabel(double tick, const QLocale& locale, QChar format, int precision) override;

 private:
  TemperatureUnit unit_ = TemperatureUnit::celsius;
};

class TemperatureTicker : public QCPAxisTicker {
 public:
  void setUnit(TemperatureUnit unit) { unit_ = unit; }

 protected:
  double getTickStep(const QCPRange& range) override;
  QVector<double> createTickVector(double step, const QCPRange& range) override;
  QString getTickLabel(double tick, const QLocale& locale, QChar format, int precision) override;

 private:
  TemperatureUnit unit_ = TemperatureUnit::celsius;
};

}  // namespace soakwright::gui
