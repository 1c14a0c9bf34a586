// SPDX-License-Identifier: GPL-3.0-or-later
// Marks of traces: stamped into a picture they stand where they are drawn as shapes, at every resolution.

#include "app/gui/chart/trace_marks.h"

#include <QtTest>
#include <cstdlib>

#include <qcustomplot.h>

using namespace soakwright::gui;

class TraceMarksTest : public QObject {
  Q_OBJECT

 private:
  static QImage drawn(TraceMarks& marks, const QPointF& at, std::size_t shape, double scale,
                      bool stamped = true) {
    QImage canvas(QSize(40, 30) * scale, QImage::Format_RGB32);
    canvas.fill(Qt::white);
    QCPPainter painter(&canvas);
    painter.scale(scale, scale);
    painter.setRenderHint(QPainter::Antialiasing);
    if (!stamped) painter.setMode(QCPPainter::pmVectorized);
    marks.draw(&painter, at, shape, Qt::black, Qt::yellow);
    painter.end();
    return canvas;
  }
  static QRect inked(const QImage& picture) {
    QRect box;
    for (int y = 0; y < picture.height(); ++y)
      for (int x = 0; x < picture.width(); ++x)
        if (qGreen(picture.pixel(x, y)) < 200) box |= QRect(x, y, 1, 1);
    return box;
  }

 private slots:
  void a_stamp_stands_where_the_shape_stands_data() {
    QTest::addColumn<double>("scale");
    for (const double scale : {1.0, 1.25, 1.5, 2.0}) QTest::addRow("%g", scale) << scale;
  }

  void a_stamp_stands_where_the_shape_stands() {
    QFETCH(double, scale);
    TraceMarks marks;
    for (std::size_t shape = 0; shape < TraceMarks::kShapes; ++shape)
      for (const QPointF at : {QPointF(20.0, 15.0), QPointF(20.3, 14.6), QPointF(11.5, 17.5)}) {
        const QRect stamp = inked(drawn(marks, at, shape, scale));
        const QRect exact = inked(drawn(marks, at, shape, scale, false));
        QVERIFY(!exact.isEmpty());
        for (const int apart : {stamp.left() - exact.left(), stamp.right() - exact.right(),
                                stamp.top() - exact.top(), stamp.bottom() - exact.bottom()})
          QVERIFY2(std::abs(apart) <= 1, qPrintable(QStringLiteral("%1 pixels").arg(apart)));
      }
  }

  void shapes_differ_and_begin_anew_after_the_last() {
    TraceMarks marks;
    const QPointF at(20.0, 15.0);
    for (std::size_t a = 0; a < TraceMarks::kShapes; ++a) {
      for (std::size_t b = a + 1; b < TraceMarks::kShapes; ++b)
        QVERIFY(drawn(marks, at, a, 1.0) != drawn(marks, at, b, 1.0));
      QCOMPARE(drawn(marks, at, a + TraceMarks::kShapes, 1.0), drawn(marks, at, a, 1.0));
    }
  }
};

QTEST_MAIN(TraceMarksTest)
#include "trace_marks_test.moc"
