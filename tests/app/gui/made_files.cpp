// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/gui/made_files.h"

#include <QDir>
#include <QFile>
#include <QTextStream>
#include <algorithm>
#include <cstdlib>

namespace soakwright::gui::made {
namespace {

constexpr double kModule = 20.0;
constexpr double kHold = 605.0;
constexpr double kEnd = 120.0;

double course_c(const Run& run, double hours) {
  const double up = (kHold - kModule) / run.heating;
  if (hours < 0.0) return kModule;
  if (hours < up) return kModule + run.heating * hours;
  if (hours < up + run.hold_h) return kHold;
  return std::max(kEnd, kHold - run.cooling * (hours - up - run.hold_h));
}

/// Small and always the same: a test that fails today fails tomorrow.
class Noise {
 public:
  double next() {
    state_ = state_ * 1'664'525U + 1'013'904'223U;
    return (static_cast<double>(state_ >> 8) / 16'777'216.0 - 0.5) * 0.6;
  }

 private:
  quint32 state_ = 2031;
};

}  // namespace

QString write(const QString& folder, const QString& name, const QString& text) {
  const QString path = QDir(folder).filePath(name);
  QFile file(path);
  if (!file.open(QIODevice::WriteOnly)) std::abort();
  file.write(text.toUtf8());
  return path;
}

QString log(const QString& folder, const QString& name, const Run& run) {
  QString text;
  QTextStream out(&text);
  out << "Recorder: Port Ellery bay 2\nWork: drum D-3\nTime";
  for (int i = 0; i < run.channels; ++i) out << ",TC" << i + 1 << " (°C)";
  if (run.set_point) out << ",Set point (°C)";
  out << "\n";
  const double up = (kHold - kModule) / run.heating;
  const double end_h = std::max(run.until_h, up + run.hold_h + (kHold - kEnd) / run.cooling);
  Noise noise;
  const auto rows = static_cast<int>(end_h * 3600.0 / run.interval_s);
  for (int row = 0; row < rows; ++row) {
    const int second = row * run.interval_s;
    const double hours = second / 3600.0;
    out << QStringLiteral("2031-04-%1 %2:%3:%4")
               .arg(2 + (second + 21'600) / 86'400, 2, 10, QLatin1Char('0'))
               .arg((second / 3600 + 6) % 24, 2, 10, QLatin1Char('0'))
               .arg(second / 60 % 60, 2, 10, QLatin1Char('0'))
               .arg(second % 60, 2, 10, QLatin1Char('0'));
    for (int i = 0; i < run.channels; ++i) {
      double celsius = course_c(run, hours - 0.01 * i) - 0.4 * i + 0.2 * run.channels + noise.next();
      if (run.dip && run.dip->channel == i) {
        const double into = hours - up - run.dip->at_h;
        const double lasts = run.dip->lasts_min / 60.0;
        if (into >= 0.0 && into <= lasts)
          celsius -= run.dip->depth * std::min({1.0, 8.0 * into / lasts, 8.0 * (lasts - into) / lasts});
      }
      out << "," << QString::number(celsius, 'f', 1);
    }
    if (run.set_point) out << "," << QString::number(course_c(run, hours), 'f', 1);
    out << "\n";
  }
  out.flush();
  return write(folder, name, text);
}

QString procedure(const QString& folder, const QString& name, int rate, int hold_min) {
  return write(folder, name,
               QStringLiteral(R"(soakwright = "procedure 1"
number = "HTP-021"
revision = "C"
title = "Stress relief of 38 mm drum nozzle seams"
unit = "C"
source = "Brackwater procedure book"
flag = "seen"

[record]
temperature_max = 650
start_temperature_max = 300
gap_max = "5 min"

[[stage]]
kind = "heat"
above = 300
rate_max = %1
spread_max = 60

[[stage]]
kind = "hold"
low = 590
high = 620
time_min = "%2 min"
spread_max = 30
excursion_time_max = "0 s"

[[stage]]
kind = "cool"
above = 300
rate_max = 180
spread_max = 60
)")
                   .arg(rate)
                   .arg(hold_min));
}

QString job(const QString& folder, const QString& name, const QString& log, const QString& procedure) {
  return write(folder, name,
               QStringLiteral(R"(soakwright = "job 1"
work = "Steam drum D-3, nozzle N2 to shell"
weld = "W-117"
client = "Saltmarsh Heat & Power"
contractor = "Brackwater Fabrication"
log = "%1"
procedure = "%2"

[[thermocouple]]
column = "TC1"
role = "control"
[[thermocouple]]
column = "TC2"
[[thermocouple]]
column = "TC3"
[[thermocouple]]
column = "TC4"
)")
                   .arg(log, procedure));
}

Run run_with_dip() {
  Run run;
  run.dip = Run::Dip{};
  return run;
}

Case drum_case(const QString& folder, const Run& run) {
  const QString log_name = QStringLiteral("d3-n2.csv");
  const QString procedure_name = QStringLiteral("htp-021.toml");
  return {log(folder, log_name, run), procedure(folder, procedure_name, 140, 100),
          job(folder, QStringLiteral("job.toml"), log_name, procedure_name)};
}

}  // namespace soakwright::gui::made
