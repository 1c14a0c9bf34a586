// SPDX-License-Identifier: GPL-3.0-or-later
// No words over the temperatures lie on others, whatever is chosen, however far one zooms, with and without
// another record laid over.

#include "app/gui/chart/chart_labels.h"

#include <qcustomplot.h>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/panes/list_pane.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

class ChartLabelsTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString dipped_, fast_, procedure_;
  int labels_ = 0;

  /// Two labels of the chart that lie on each other; empty where none do.
  QString covered(const ChartPane& chart) {
    const std::vector<ChartLabel> all = chart.labels();
    labels_ += static_cast<int>(all.size());
    for (std::size_t i = 0; i < all.size(); ++i) {
      if (all[i].text.isEmpty() || all[i].box.isEmpty()) return QStringLiteral("a label without words");
      for (std::size_t j = 0; j < i; ++j)
        if (all[i].box.intersects(all[j].box)) return all[i].text + QStringLiteral(" on ") + all[j].text;
    }
    return {};
  }
  /// Over views of all sizes.
  QString covered_in_any_view(ChartPane& chart) {
    chart.resetView();
    const ChartPane::Ranges whole = chart.ranges();
    const double long_s = whole.to_s - whole.from_s;
    const double high_c = whole.high_c - whole.low_c;
    for (const double time : {1.0, 0.5, 0.2})
      for (const double from : {0.0, 0.2, 0.4, 0.6, 0.8})
        for (const double temperature : {1.0, 3.0, 0.4, 0.1}) {
          const double from_s = whole.from_s + from * long_s;
          const double middle_c = temperature < 1.0 ? 605.0 : 0.5 * (whole.low_c + whole.high_c);
          chart.setRanges({from_s, from_s + time * long_s, middle_c - 0.5 * temperature * high_c,
                           middle_c + 0.5 * temperature * high_c});
          if (const QString both = covered(chart); !both.isEmpty())
            return QStringLiteral("%1 (%2, %3, %4)").arg(both).arg(time).arg(from).arg(temperature);
        }
    return {};
  }
  /// Labels of limits and notes with a reading, or a point half way to the next, inside; brute force.
  static QStringList lines_through_labels(RealWindow& real) {
    const auto* const chart = real.part<ChartPane>();
    const QCPAxisRect& area = *chart->findChild<QCustomPlot*>()->axisRect(0);
    const Record& record = *real.window.session().open().analysis.record;
    const double from_s = chart->ranges().from_s;
    QStringList through;
    for (const ChartLabel& label : chart->labels()) {
      if (label.kind == ChartLabel::Kind::point) continue;
      for (const Channel& channel : record.channels) {
        std::optional<QPointF> before;
        for (std::size_t row = 0; row < record.rows(); ++row) {
          const auto celsius = channel.readings.celsius(row);
          if (!celsius) continue;
          const double x =
              area.left() + (record.times_s[row] - from_s) * area.width() / (chart->ranges().to_s - from_s);
          const QPointF at(x, area.axis(QCPAxis::atLeft)->coordToPixel(*celsius));
          if (label.box.contains(at) || (before && label.box.contains(0.5 * (at + *before)))) {
            through.append(label.text + QStringLiteral(" crossed by ") +
                           QString::fromStdString(channel.name));
            break;
          }
          before = at;
        }
      }
    }
    return through;
  }
  static QStringList words(const ChartPane& chart, ChartLabel::Kind kind) {
    QStringList all;
    for (const ChartLabel& label : chart.labels())
      if (label.kind == kind) all.append(label.text);
    return all;
  }

 private slots:
  void initTestCase() {
    dipped_ = made::log(files_.path(), QStringLiteral("d3-n3.csv"), made::run_with_dip());
    made::Run fast;
    fast.heating = 130.0;
    fast_ = made::log(files_.path(), QStringLiteral("d3-n4.csv"), fast);
    procedure_ = made::procedure(files_.path(), QStringLiteral("htp-021.toml"), 140, 100);
  }

  void the_hold_and_what_is_required_of_it_are_both_readable() {
    RealWindow real;
    QVERIFY(real.open({dipped_, procedure_}));
    auto* const chart = real.part<ChartPane>();
    QVERIFY(words(*chart, ChartLabel::Kind::required).contains(QStringLiteral("≥ 1 h 40 min")));
    QVERIFY(!words(*chart, ChartLabel::Kind::range).isEmpty());
    QVERIFY(!words(*chart, ChartLabel::Kind::maximum).isEmpty());
    real.window.compareWith(fast_);
    QVERIFY(QTest::qWaitFor([&real] { return !real.window.otherRecord().busy(); }, 60'000));
    QVERIFY(chart->overlay());
    QVERIFY(words(*chart, ChartLabel::Kind::required).contains(QStringLiteral("≥ 1 h 40 min")));
    QVERIFY(!words(*chart, ChartLabel::Kind::range).isEmpty());
  }

  void no_trace_runs_through_what_a_limit_or_a_moment_is_called() {
    RealWindow real;
    QVERIFY(real.open({dipped_, procedure_}));
    auto* const chart = real.part<ChartPane>();
    for (const QSize size : {QSize(1024, 700), QSize(1280, 800), QSize(1600, 900)}) {
      real.window.resize(size);
      QCoreApplication::processEvents();
      chart->resetView();
      QVERIFY(!words(*chart, ChartLabel::Kind::note).isEmpty());
      const auto crossed = lines_through_labels(real);
      QVERIFY2(crossed.isEmpty(), qPrintable(crossed.join(u'\n')));
    }
  }

  void no_label_lies_on_another() {
    RealWindow real;
    QVERIFY(real.open({dipped_, procedure_}));
    auto* const chart = real.part<ChartPane>();
    auto* requirements = real.part<ListPane>(QStringLiteral("Requirements"));
    QVERIFY(chart && requirements);
    const auto look_at_all = [&]() -> QString {
      if (QString both = covered_in_any_view(*chart); !both.isEmpty()) return both;
      const std::vector<ListLine>& lines = requirements->lines().content().lines;
      for (const ListLine& line : lines) {
        requirements->mark(line.index);
        emit requirements->chosen(line.index);
        if (QString both = covered(*chart); !both.isEmpty()) return line.cells.join(u' ') + both;
        if (QString both = covered_in_any_view(*chart); !both.isEmpty()) return line.cells.join(u' ') + both;
      }
      return {};
    };
    for (const QSize size : {QSize(1280, 800), QSize(900, 620)}) {
      real.window.resize(size);
      QCoreApplication::processEvents();
      QCOMPARE(look_at_all(), QString());
    }
    real.window.compareWith(fast_);
    QVERIFY(QTest::qWaitFor([&real] { return !real.window.otherRecord().busy(); }, 60'000));
    QVERIFY(chart->overlay());
    QCOMPARE(look_at_all(), QString());
    QVERIFY(labels_ > 2000);
  }
};

QTEST_MAIN(ChartLabelsTest)
#include "chart_labels_test.moc"
