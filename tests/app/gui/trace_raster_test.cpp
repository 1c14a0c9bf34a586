// SPDX-License-Identifier: GPL-3.0-or-later
// Traces as pixel columns: every reading is on the picture, held against brute force; dashes hide no peak.

#include "app/gui/chart/trace_raster.h"

#include <QtTest>
#include <algorithm>
#include <cmath>
#include <vector>

using namespace soakwright::gui;

class TraceRasterTest : public QObject {
  Q_OBJECT

 private:
  /// In so many strips side by side.
  static QImage drawn(const std::vector<QPointF>& points, const QPen& pen, double scale = 1.0,
                      int strips = 1) {
    QImage canvas(QSize(200, 100) * scale, QImage::Format_RGB32);
    canvas.fill(Qt::white);
    QPainter painter(&canvas);
    painter.scale(scale, scale);
    TraceRaster raster;
    raster.begin(painter, QRect(0, 0, 200, 100));
    raster.clear(0, raster.columns());
    const TraceStroke stroke = raster.stroke(pen);
    for (int i = 0; i < strips; ++i)
      TraceBrush(raster, raster.columns() * i / strips, raster.columns() * (i + 1) / strips)
          .polyline(stroke, points.data(), static_cast<int>(points.size()));
    raster.put(painter);
    painter.end();
    return canvas;
  }
  static bool inked(const QImage& picture, int x, int y) { return qGreen(picture.pixel(x, y)) < 128; }

 private slots:
  void every_point_of_a_noisy_line_is_on_the_picture_data() {
    QTest::addColumn<Qt::PenStyle>("style");
    QTest::newRow("solid") << Qt::SolidLine;
    QTest::newRow("dashed") << Qt::DashLine;
  }

  void every_point_of_a_noisy_line_is_on_the_picture() {
    QFETCH(Qt::PenStyle, style);
    std::vector<QPointF> points;
    quint32 state = 7;
    for (int i = 0; i < 800; ++i) {
      state = state * 1'664'525U + 1'013'904'223U;
      points.emplace_back(0.25 * i, 10.0 + static_cast<double>(state >> 24) * 80.0 / 256.0);
    }
    const QImage picture = drawn(points, QPen(Qt::red, 2.0, style));
    for (const QPointF& point : points)
      QVERIFY2(inked(picture, static_cast<int>(point.x()), static_cast<int>(point.y())),
               qPrintable(QStringLiteral("%1, %2").arg(point.x()).arg(point.y())));
  }

  void a_level_line_is_as_wide_as_its_pen_and_no_wider() {
    for (const double scale : {1.0, 2.0}) {
      const QImage picture = drawn({{0.0, 50.0}, {199.0, 50.0}}, QPen(Qt::red, 2.0), scale);
      const int x = static_cast<int>(100 * scale);
      int rows = 0;
      for (int y = 0; y < picture.height(); ++y) rows += inked(picture, x, y) ? 1 : 0;
      QCOMPARE(rows, static_cast<int>(2 * scale));
      QVERIFY(inked(picture, x, static_cast<int>(50 * scale)));
    }
  }

  void a_dashed_level_line_has_gaps_and_a_spike_in_it_has_none() {
    std::vector<QPointF> points;
    for (int x = 0; x < 200; ++x) points.emplace_back(x, x % 10 == 5 ? 20.0 : 50.0);
    const QImage level = drawn({{0.0, 50.0}, {199.0, 50.0}}, QPen(Qt::red, 2.0, Qt::DashLine));
    int gaps = 0;
    for (int x = 0; x < 199; ++x) gaps += inked(level, x, 50) ? 0 : 1;
    QVERIFY2(gaps > 20 && gaps < 120, qPrintable(QString::number(gaps)));
    const QImage spikes = drawn(points, QPen(Qt::red, 2.0, Qt::DashLine));
    for (int x = 5; x < 200; x += 10) QVERIFY(inked(spikes, x, 20));
  }

  void one_point_alone_is_a_dot() { QVERIFY(inked(drawn({{30.0, 40.0}}, QPen(Qt::red, 1.5)), 30, 40)); }

  void strips_side_by_side_give_the_picture_that_one_gives() {
    std::vector<QPointF> points;
    quint32 state = 11;
    for (double x = -3.0; x < 204.0; x += 0.7) {
      state = state * 1'664'525U + 1'013'904'223U;
      points.emplace_back(x, 10.0 + static_cast<double>(state >> 24) * 80.0 / 256.0);
    }
    for (const double scale : {1.0, 1.5, 2.0})
      for (const int strips : {2, 3, 4})
        QCOMPARE(drawn(points, QPen(Qt::red, 2.0), scale, strips), drawn(points, QPen(Qt::red, 2.0), scale));
  }

  void what_lies_beyond_the_picture_is_cut() {
    const QImage picture = drawn({{-1000.0, -400.0}, {1000.0, 600.0}}, QPen(Qt::red, 2.0));
    // At x = 100 this line is at 150, below the picture.
    QVERIFY(!inked(picture, 100, 50));
    const QImage steep = drawn({{-50.0, 0.0}, {250.0, 100.0}}, QPen(Qt::red, 2.0));
    QVERIFY(inked(steep, 100, 50));
  }
};

QTEST_MAIN(TraceRasterTest)
#include "trace_raster_test.moc"
