// SPDX-License-Identifier: GPL-3.0-or-later
// What a pixel column shows of the readings, held against going through every reading.

#include "app/gui/chart/trace_pyramid.h"

#include <QtTest>
#include <algorithm>
#include <cmath>

using namespace soakwright;
using namespace soakwright::gui;

class TracePyramidTest : public QObject {
  Q_OBJECT

 private:
  static std::vector<TracePoint> drawn(const TracePyramid& pyramid, double from_s, double to_s,
                                       double columns, double interpolate_max_s = 1e9) {
    std::vector<TracePoint> points;
    pyramid.append_polyline({from_s, to_s, (to_s - from_s) / columns, 0.0, interpolate_max_s, {}}, points);
    return points;
  }

 private slots:
  void keeps_every_reading_where_there_is_room() {
    const std::vector<double> times = {0, 10, 20, 30, 40};
    const TracePyramid pyramid(times, Readings::of_celsius({1, 5, 2, 8, 3}, 0.1));
    const auto points = drawn(pyramid, 0, 40, 400);
    QCOMPARE(points.size(), std::size_t{5});
    for (std::size_t i = 0; i < 5; ++i) QCOMPARE(points[i].at_s, times[i]);
    QCOMPARE(points[3].celsius, 8.0);
  }

  void keeps_the_lowest_and_highest_of_every_column() {
    std::vector<double> times;
    std::vector<double> celsius;
    quint32 state = 7;
    for (int i = 0; i < 20'000; ++i) {
      times.push_back(i);
      state = state * 1'664'525U + 1'013'904'223U;
      celsius.push_back(500.0 + static_cast<double>(state >> 20) / 64.0);
    }
    celsius[12'345] = 999.0;  // one spike must not get lost
    celsius[3'210] = 7.0;
    const TracePyramid pyramid(times, Readings::of_celsius(celsius, 0.1));
    const auto points = drawn(pyramid, 0, 20'000, 500);
    QVERIFY(points.size() <= 4 * 520);
    double lowest = 1e9;
    double highest = -1e9;
    for (const TracePoint& point : points) {
      lowest = std::min(lowest, point.celsius);
      highest = std::max(highest, point.celsius);
    }
    QCOMPARE(highest, 999.0);
    QCOMPARE(lowest, 7.0);
    for (std::size_t i = 1; i < points.size(); ++i) QVERIFY(points[i].at_s >= points[i - 1].at_s);
    // Ten columns of 40 rows, each against its own readings.
    for (int column = 100; column < 110; ++column) {
      const auto begin = celsius.begin() + 40 * column;
      const auto [low, high] = std::minmax_element(begin, begin + 40);
      double seen_low = 1e9;
      double seen_high = -1e9;
      for (const TracePoint& point : points)
        if (point.at_s >= 40.0 * (column - 1) && point.at_s < 40.0 * (column + 2)) {
          seen_low = std::min(seen_low, point.celsius);
          seen_high = std::max(seen_high, point.celsius);
        }
      QVERIFY(seen_low <= static_cast<double>(static_cast<float>(*low)));
      QVERIFY(seen_high >= static_cast<double>(static_cast<float>(*high)));
    }
  }

  void lifts_the_pen_over_holes_and_clock_faults() {
    const std::vector<double> times = {0, 10, 20, 300, 310, 320};
    const TracePyramid pyramid(times, Readings::of_celsius({1, 2, 3, 4, 5, 6}, 0.1));
    const auto pen_up = [](const std::vector<TracePoint>& points) {
      return std::count_if(points.begin(), points.end(),
                           [](const TracePoint& p) { return std::isnan(p.celsius); });
    };
    QCOMPARE(pen_up(drawn(pyramid, 0, 320, 320, 120.0)), 1);
    QCOMPARE(pen_up(drawn(pyramid, 0, 320, 320, 300.0)), 0);
    std::vector<TracePoint> points;
    const std::vector<std::size_t> breaks = {1};
    pyramid.append_polyline({0, 320, 1, 0, 1e9, breaks}, points);
    QCOMPARE(pen_up(points), 1);
  }

  void goes_one_reading_beyond_what_is_in_view() {
    std::vector<double> times;
    std::vector<double> celsius;
    for (int i = 0; i < 100; ++i) {
      times.push_back(10.0 * i);
      celsius.push_back(i);
    }
    celsius[19] = std::nan("");
    const TracePyramid pyramid(times, Readings::of_celsius(celsius, 0.1));
    const auto points = drawn(pyramid, 195, 305, 1000);
    QCOMPARE(points.front().at_s, 180.0);
    QCOMPARE(points.back().at_s, 310.0);
  }

  void knows_the_extremes_of_any_rows() {
    std::vector<double> times;
    std::vector<double> celsius;
    for (int i = 0; i < 1000; ++i) {
      times.push_back(i);
      celsius.push_back(std::fmod(i * 37.0, 101.0));
    }
    const TracePyramid pyramid(times, Readings::of_celsius(celsius, 1.0));
    for (const auto& [first, last] :
         {std::pair{0, 1000}, std::pair{3, 9}, std::pair{511, 777}, std::pair{64, 128}}) {
      const auto [low, high] = std::minmax_element(celsius.begin() + first, celsius.begin() + last);
      const auto found = pyramid.extremes(static_cast<std::size_t>(first), static_cast<std::size_t>(last));
      QCOMPARE(static_cast<double>(found.lowest), *low);
      QCOMPARE(static_cast<double>(found.highest), *high);
    }
    QVERIFY(std::isnan(pyramid.extremes(5, 5).lowest));
  }
};

QTEST_APPLESS_MAIN(TracePyramidTest)
#include "trace_pyramid_test.moc"
