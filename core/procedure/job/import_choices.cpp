// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/job/import_choices.h"

#include <cstddef>
#include <cstdint>
#include <optional>

#include "core/procedure/job/import_problems.h"
#include "core/procedure/toml/value_readers.h"

namespace soakwright {
namespace {

std::optional<std::size_t> line_or_none(const FoundValue& found) {
  const auto* const written = found.value.as<std::int64_t>();
  if (!written || *written < 0) return found.refuse(not_a_header_line(found));
  return static_cast<std::size_t>(*written);
}

const UnitWord<ChannelUnit>& unit_of_all() {
  static const UnitWord<ChannelUnit> read = unit_word<ChannelUnit>(
      {{"C", ChannelUnit::celsius}, {"F", ChannelUnit::fahrenheit}, {"K", ChannelUnit::kelvin}});
  return read;
}

}  // namespace

void read_import_choices(TableReader& in, ImportChoices& reading) {
  in.may("encoding",
         one_of<LogEncoding>({{"utf-8", LogEncoding::utf_8},
                              {"utf-16le", LogEncoding::utf_16_le},
                              {"utf-16be", LogEncoding::utf_16_be},
                              {"windows-1252", LogEncoding::windows_1252}}),
         reading.encoding);
  in.may("delimiter", one_of<char>({{",", ','}, {";", ';'}, {"tab", '\t'}, {"|", '|'}, {"spaces", ' '}}),
         reading.delimiter);
  in.may("decimal", one_of<char>({{".", '.'}, {",", ','}}), reading.decimal);
  in.may("header_line", line_or_none, reading.header_line);
  in.may("time_column", column_name, reading.time_column);
  in.may("time",
         one_of<TimeMeaning>({{"date and time", TimeMeaning::date_time},
                              {"time of day", TimeMeaning::time_of_day},
                              {"elapsed s", TimeMeaning::elapsed_s},
                              {"elapsed min", TimeMeaning::elapsed_min},
                              {"elapsed h", TimeMeaning::elapsed_h},
                              {"elapsed h:mm:ss", TimeMeaning::elapsed_hms},
                              {"serial days", TimeMeaning::serial_days},
                              {"unix s", TimeMeaning::unix_s},
                              {"unix ms", TimeMeaning::unix_ms}}),
         reading.time);
  // Before `dates`: of two keys as near as each other the first is suggested.
  if (in.may("date", date, reading.date)) reading.date_line = in.line_of("date");
  in.may("dates",
         one_of<DateOrder>({{"dmy", DateOrder::dmy}, {"mdy", DateOrder::mdy}, {"ymd", DateOrder::ymd}}),
         reading.dates);
  if (in.may("start", local_time, reading.start)) reading.start_line = in.line_of("start");
  if (in.may("clock_forward", local_time, reading.clock_forward))
    reading.clock_forward_line = in.line_of("clock_forward");
  if (in.may("unit", unit_of_all(), reading.unit)) reading.unit_line = in.line_of("unit");
  in.may("unlisted", one_of<bool>({{"off", true}, {"evaluated", false}}), reading.unlisted_off);
}

}  // namespace soakwright
