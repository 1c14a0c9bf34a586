// SPDX-License-Identifier: GPL-3.0-or-later
// The whole record as a strip below the chart, with a frame around the time that the chart shows: dragging
// the frame or one of its ends shows another time.
#pragma once

#include <QWidget>
#include <functional>
#include <optional>
#include <utility>
#include <vector>

#include "app/gui/chart/chart_colours.h"

namespace soakwright::gui {

/// A stretch of time, in seconds of the record.
struct TimeSpan {
  double from_s = 0.0, to_s = 1.0;
  bool operator==(const TimeSpan&) const = default;
};

class TimeOverview : public QWidget {
  Q_OBJECT

 public:
  /// The lowest and the highest temperature between two moments; none where there is no reading.
  using Extremes = std::function<std::optional<std::pair<double, double>>(double from_s, double to_s)>;

  explicit TimeOverview(Extremes extremes, QWidget* parent = nullptr);

  void setColours(const ChartColours& colours);
  /// The time that the strip is wide; what is drawn in it is worked out anew.
  void setWhole(const TimeSpan& whole);
  void setShown(const TimeSpan& shown);
  /// The strip lies under the plot: the columns of pixels where that begins and ends.
  void setEnds(int left, int right);
  /// Where a moment lies.
  [[nodiscard]] double x(double at_s) const;

 signals:
  void wanted(const soakwright::gui::TimeSpan& shown);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  enum class Grip { none, first_end, last_end, frame };
  [[nodiscard]] double timeAt(double x) const;
  [[nodiscard]] Grip gripAt(double x) const;
  [[nodiscard]] TimeSpan within(TimeSpan span) const;
  void workOut();

  Extremes extremes_;
  ChartColours colours_;
  TimeSpan whole_, shown_;
  int left_ = 0, right_ = 0;
  std::vector<std::optional<std::pair<double, double>>>
      columns_;  ///< from left to right, kColumnWidth wide each
  bool stale_ = true;
  bool waiting_ = false;
  Grip grip_ = Grip::none;
  double gripped_s_ = 0.0;  ///< where in time the frame was taken hold of
  TimeSpan gripped_;        ///< the frame then
};

}  // namespace soakwright::gui
