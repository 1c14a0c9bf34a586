// SPDX-License-Identifier: GPL-3.0-or-later
// Files for the window's tests, made on the spot: a run of the drum D-3 and its procedure.
#pragma once

#include <QString>
#include <optional>

namespace soakwright::gui::made {

/// A run: up at `heating` °C/h to 605, held, down at `cooling` °C/h; channels lag a little behind each other.
struct Run {
  int channels = 4;
  int interval_s = 30;
  double heating = 110.0;
  double hold_h = 2.0;
  double cooling = 130.0;
  double until_h = 0.0;  ///< goes on at the end temperature to here
  bool set_point = false;
  struct Dip {
    int channel = 1;    ///< from 0
    double at_h = 0.5;  ///< after the hold begins
    double depth = 25.0;
    double lasts_min = 12.0;
  };
  std::optional<Dip> dip;
};

/// With a dip of one thermocouple in the hold.
Run run_with_dip();

/// Writes `text` to `folder`/`name` and gives the path.
QString write(const QString& folder, const QString& name, const QString& text);

QString log(const QString& folder, const QString& name, const Run& run);
/// Heat above 300 at most `rate`, hold 590 to 620 for `hold_min`, cool above 300 at most 180.
QString procedure(const QString& folder, const QString& name, int rate, int hold_min);
/// Names the log and the procedure beside it.
QString job(const QString& folder, const QString& name, const QString& log, const QString& procedure);

/// d3-n2.csv of the run, htp-021.toml with 140 °C/h and 100 min, and job.toml that names both.
struct Case {
  QString log, procedure, job;
};
Case drum_case(const QString& folder, const Run& run = {});

}  // namespace soakwright::gui::made
