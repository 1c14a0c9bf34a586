// SPDX-License-Identifier: GPL-3.0-or-later
// Small logs, procedures and jobs for tests of many records. All invented.
#pragma once

#include <string>

/// A log of one thermocouple, a row a minute: up to 600 °C, so many minutes there, and down again.
inline std::string log_of_hold(int minutes, const std::string& channel = "TC1") {
  std::string text = "Elapsed (min)," + channel + " (C)\n";
  int minute = 0;
  const auto row = [&](int celsius) {
    text += std::to_string(minute++) + ',' + std::to_string(celsius) + ".0\n";
  };
  for (int celsius = 20; celsius < 600; celsius += 20) row(celsius);
  for (int i = 0; i <= minutes; ++i) row(600);
  for (int celsius = 580; celsius >= 20; celsius -= 20) row(celsius);
  return text;
}

/// Requires an hour between 590 and 620 °C.
inline std::string procedure_of_an_hour(const std::string& number = "P-1") {
  return "soakwright = \"procedure 1\"\nnumber = \"" + number +
         "\"\nunit = \"C\"\n[[stage]]\nkind = \"hold\"\nlow = 590\nhigh = 620\ntime_min = \"60 min\"\n";
}

inline std::string job_of(const std::string& keys) { return "soakwright = \"job 1\"\n" + keys; }
