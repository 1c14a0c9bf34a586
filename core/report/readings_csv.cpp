// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/readings_csv.h"

#include <vector>

#include "core/report/csv_writer.h"

namespace soakwright {

std::string readings_csv(const Record& record) {
  CsvWriter csv;
  std::vector<const Readings*> columns;
  csv.text("Elapsed (s)");
  csv.text("Moment");
  const auto column = [&](const std::string& name, const Readings& readings) {
    csv.text(name + " (C)");
    columns.push_back(&readings);
  };
  for (const Channel& channel : record.channels) column(channel.name, channel.readings);
  for (const OtherColumn& other : record.other_columns)
    if (other.readings) column(other.name, *other.readings);
  csv.end_line();
  for (std::size_t row = 0; row < record.rows(); ++row) {
    csv.number(record.times_s[row]);
    csv.exact(record.clock.text(record.times_s[row], RecorderClock::kAsNeeded));
    for (const Readings* readings : columns) csv.number(readings->celsius(row));
    csv.end_line();
  }
  return csv.str();
}

}  // namespace soakwright
