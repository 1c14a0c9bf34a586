// SPDX-License-Identifier: GPL-3.0-or-later
// The window's two figures, on a record of 86,400 rows and 24 channels: a full redraw of the chart under 30
// ms, and the window up with the first trace under 1 s. Fails where a figure is missed by more than a fifth.

#include <QApplication>
#include <QElapsedTimer>
#include <QtTest>
#include <algorithm>
#include <cstdio>
#include <vector>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/main_window.h"
#include "tests/app/gui/made_files.h"

using namespace soakwright::gui;

namespace {

constexpr double kRedraw_ms = 30.0;
constexpr double kUp_ms = 1000.0;
constexpr double kSlack = 1.2;

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

double redraw_ms(ChartPane& chart) {
  std::vector<double> times;
  for (int i = 0; i < 21; ++i) {
    QElapsedTimer clock;
    clock.start();
    chart.redrawNow();
    times.push_back(static_cast<double>(clock.nsecsElapsed()) * 1e-6);
  }
  return median(times);
}

}  // namespace

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", qEnvironmentVariable("QT_QPA_PLATFORM", QStringLiteral("offscreen")).toLatin1());
  QTemporaryDir folder;
  made::Run run;
  run.channels = 24;
  run.interval_s = 1;
  run.heating = 70;
  run.hold_h = 4;
  run.cooling = 80;
  run.until_h = 24;
  const QString log = made::log(folder.path(), QStringLiteral("day.csv"), run);
  const QString procedure = made::procedure(folder.path(), QStringLiteral("htp.toml"), 100, 180);

  QElapsedTimer clock;
  clock.start();
  QApplication application(argc, argv);
  SavedSettings memory(folder.filePath(QStringLiteral("gui.ini")));
  MainWindow window(memory);
  window.resize(1280, 800);
  window.show();
  window.session().openFiles({log, procedure});
  if (!QTest::qWaitFor([&window] { return !window.session().busy(); }, 60'000)) return 1;
  auto* chart = window.findChild<ChartPane*>();
  chart->redrawNow();
  const double up_ms = static_cast<double>(clock.nsecsElapsed()) * 1e-6;
  if (!window.session().open().has_record()) return 1;

  const double whole_ms = redraw_ms(*chart);
  chart->zoomTime(6.0);
  const double near_ms = redraw_ms(*chart);
  const bool good =
      whole_ms <= kSlack * kRedraw_ms && near_ms <= kSlack * kRedraw_ms && up_ms <= kSlack * kUp_ms;
  std::printf("86,400 rows x 24 channels\n");
  std::printf("full redraw, whole record   %7.1f ms (to reach: %.0f)\n", whole_ms, kRedraw_ms);
  std::printf("full redraw, a sixth of it  %7.1f ms (to reach: %.0f)\n", near_ms, kRedraw_ms);
  std::printf("window up with the traces   %7.1f ms (to reach: %.0f)\n", up_ms, kUp_ms);
  return good ? 0 : 1;
}
