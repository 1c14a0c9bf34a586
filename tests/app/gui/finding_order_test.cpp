// SPDX-License-Identifier: GPL-3.0-or-later
// The order of the findings can be seen and chosen, and is kept.

#include <QComboBox>
#include <QLineEdit>
#include <limits>

#include "app/gui/panes/finding_pane.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

namespace {

constexpr double kNoTime = std::numeric_limits<double>::infinity();

double begin_s(const Report& report, std::size_t finding) {
  double from_s = kNoTime;
  for (const ChartMark& mark : report.chart.marks)
    if (mark.finding == finding) from_s = std::min(from_s, mark.from_s);
  return from_s;
}

std::vector<double> begins(const Report& report, const std::vector<std::size_t>& findings) {
  std::vector<double> all;
  for (const std::size_t finding : findings) all.push_back(begin_s(report, finding));
  return all;
}

}  // namespace

class FindingOrderTest : public QObject {
  Q_OBJECT

 private:
  QTemporaryDir files_;
  QString log_, procedure_;

 private slots:
  void initTestCase() {
    // The rate is not met at the beginning, the hold later.
    log_ = made::log(files_.path(), QStringLiteral("d3-n3.csv"), made::run_with_dip());
    procedure_ = made::procedure(files_.path(), QStringLiteral("htp-022.toml"), 100, 100);
  }

  void the_worst_come_first_as_the_box_says() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    auto* pane = real.part<FindingPane>();
    const Report& report = *real.window.session().report();
    QVERIFY(report.findings.size() > 2);
    QCOMPARE(pane->order()->currentText(), QStringLiteral("Worst first"));
    const std::vector<std::size_t> listed = pane->listed();
    QVERIFY(listed == findings_by_number(report));
    for (const FindingRow& row : report.findings) QVERIFY(report.findings[listed.front()].kind <= row.kind);
  }

  void in_order_of_time_the_earliest_come_first_in_groups_and_filtered_too() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    auto* pane = real.part<FindingPane>();
    const Report& report = *real.window.session().report();
    std::vector<std::size_t> worst_first = pane->listed();
    pane->order()->setCurrentIndex(1);
    QCOMPARE(pane->order()->currentText(), QStringLiteral("In order of time"));
    std::vector<std::size_t> in_time = pane->listed();
    const std::vector<double> times = begins(report, in_time);
    QVERIFY(std::is_sorted(times.begin(), times.end()) && times.front() < times.back());
    std::sort(worst_first.begin(), worst_first.end());
    std::sort(in_time.begin(), in_time.end());
    QVERIFY(worst_first == in_time);
    pane->filter()->setText(QStringLiteral("rate"));
    const std::vector<double> filtered = begins(report, pane->listed());
    QVERIFY(!filtered.empty() && filtered.size() < times.size());
    QVERIFY(std::is_sorted(filtered.begin(), filtered.end()));
    pane->filter()->clear();
    pane->groups()->setCurrentIndex(pane->groups()->findText(QStringLiteral("By stage")));
    double before = -kNoTime;
    for (const ListLine& line : pane->list()->lines().content().lines) {
      if (!line.heading) QVERIFY(begin_s(report, line.index) >= before);
      before = line.heading ? -kNoTime : begin_s(report, line.index);
    }
  }

  void the_chosen_order_is_kept_and_the_chosen_finding_stays_marked() {
    RealWindow real;
    QVERIFY(real.open({log_, procedure_}));
    auto* pane = real.part<FindingPane>();
    const std::size_t last = pane->listed().back();
    real.window.session().select({Selection::Kind::finding, last});
    pane->order()->setCurrentIndex(1);
    QCOMPARE(pane->list()->currentIndex().data(ReportListModel::kIndexRole).toULongLong(), qulonglong(last));
    MainWindow again(real.memory);
    QCOMPARE(again.findChild<FindingPane*>()->order()->currentText(), QStringLiteral("In order of time"));
    pane->order()->setCurrentIndex(0);
    MainWindow later(real.memory);
    QCOMPARE(later.findChild<FindingPane*>()->order()->currentText(), QStringLiteral("Worst first"));
  }
};

QTEST_MAIN(FindingOrderTest)
#include "finding_order_test.moc"
