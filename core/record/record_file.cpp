// SPDX-License-Identifier: GPL-3.0-or-later
// The main path of this module:
//
// 1. read_log()           the file as a table
// 2. put_rows_in_order()  what the file holds twice or in the wrong order
// 3. make_time_axis()     one axis that runs forward
// 4. settle_columns()     what each column is: unit, name, temperature or not
// 5. make_channels()      columns as channels, in Celsius
// 6. place_moments()      where on the axis the times lie that the job gives
#include "core/record/record_file.h"

#include <algorithm>
#include <filesystem>
#include <utility>

#include "core/problems/caught.h"
#include "core/read/log_file.h"
#include "core/record/channels.h"
#include "core/record/clock/job_moments.h"
#include "core/record/clock/row_order.h"
#include "core/record/clock/time_axis.h"
#include "core/record/given_settings.h"
#include "core/record/record_problems.h"
#include "core/record/settled_columns.h"

namespace soakwright {
namespace {

Reading reading_of(const LogTable& table) {
  Reading reading;
  const auto named = [](const auto& setting) {
    return Setting<std::string>{std::string{name_of(setting.value)}, setting.by};
  };
  const auto as_sign = [](const Setting<char>& setting) {
    return Setting<std::string>{std::string(1, setting.value), setting.by};
  };
  reading.encoding = named(table.encoding);
  reading.delimiter = as_sign(table.delimiter);
  reading.decimal = as_sign(table.decimal);
  if (table.dates) reading.dates = named(*table.dates);
  std::string columns;
  for (const std::size_t number : table.time_columns)
    columns += (columns.empty() ? "" : " and ") + std::to_string(number);
  reading.time = named(table.time);
  reading.time.value += (table.time_columns.size() == 1 ? ", column " : ", columns ") + columns;
  reading.time_column = table.time_column;
  reading.time_columns = table.time_columns;
  reading.header_line = table.header_line;
  reading.heading = table.heading;
  return reading;
}

void add_line_notice(std::vector<Notice>& notices, const char* code, const LineIssue& line_issue,
                     Statement what) {
  if (line_issue.count != 0)
    notices.push_back({code, line_issue.line, line_issue.count, std::nullopt, std::move(what)});
}

/// What the table's lines showed; cells and clocks have theirs already.
void add_line_notices(const LogTable& table, std::vector<Notice>& notices) {
  add_line_notice(notices, "repeat-row", table.repeat_rows, state(Sentence::rows_repeated));
  add_line_notice(notices, "repeated-header", table.repeated_headers, state(Sentence::header_repeated));
  add_line_notice(notices, "short-row", table.short_rows, state(Sentence::rows_short));
  add_line_notice(notices, "long-row", table.long_rows, state(Sentence::rows_long));
  add_line_notice(notices, "missing-text", table.odd_lines,
                  state(Sentence::lines_without_time, AsWritten{table.odd_lines.text}));
  if (table.time_unit_assumed)
    notices.push_back({"time-unit-assumed",
                       table.header_line.value != 0 ? table.header_line.value : table.first_row_line, 1,
                       std::nullopt,
                       state(table.time.value == TimeKind::time_of_day ? Sentence::hours_and_minutes_assumed
                                                                       : Sentence::seconds_assumed)});
  if (table.dates_by_pace)
    notices.push_back(
        {"given-against-found", table.first_row_line, 1, std::nullopt,
         state(Sentence::date_order_against_pace, AsWritten{std::string{name_of(table.dates->value)}},
               AsWritten{std::string{name_of(*table.dates_by_pace)}})});
}

Result<std::shared_ptr<const Record>> read(const std::string& path, const Job* job,
                                           std::optional<DateOrder> dates, const Watch& watch) {
  const GivenSettings given = given_settings(job, dates);
  ReadingMeans means;
  means.watch = watch;
  auto read_table = read_log(path, given, means);
  if (!read_table) return read_table.problems();
  LogTable table = std::move(read_table).value();
  if (table.rows() < 2) return too_few_rows(path, table);

  auto order = put_rows_in_order(table, path);
  if (!order) return order.problems();
  auto axis = make_time_axis(table, path, job);
  if (!axis) return axis.problems();
  if (watch.stopped()) return Problems{};
  auto kinds = settle_columns(table, axis.value().times_s, path, job);
  if (!kinds) return kinds.problems();
  auto channels = make_channels(table, kinds.value(), path, job);
  if (!channels) return channels.problems();

  auto record = std::make_shared<Record>();
  record->file = std::filesystem::path{path}.filename().string();
  record->sha256 = table.sha256;
  record->bytes = table.bytes;
  record->reading = reading_of(table);
  record->reading.changed_by_hand = hand_changes(given, job, table, kinds.value());
  record->clock = axis.value().clock;
  record->times_s = std::move(axis.value().times_s);
  record->interval_s = axis.value().interval_s;
  record->breaks = std::move(axis.value().breaks);
  record->channels = std::move(channels.value().channels);
  record->other_columns = std::move(channels.value().other_columns);
  record->end_row = record->times_s.size();
  add_line_notices(table, record->notices);
  for (auto* some : {&order.value(), &axis.value().notices, &channels.value().notices})
    record->notices.insert(record->notices.end(), std::make_move_iterator(some->begin()),
                           std::make_move_iterator(some->end()));
  if (job != nullptr)
    if (Problems problems = place_moments(*job, table, path, *record); !problems.empty()) return problems;
  std::stable_sort(record->notices.begin(), record->notices.end(),
                   [](const Notice& a, const Notice& b) { return a.line < b.line; });
  return std::shared_ptr<const Record>{std::move(record)};
}

}  // namespace

Result<std::shared_ptr<const Record>> read_record(const std::string& path, const Job* job,
                                                  std::optional<DateOrder> dates, const Watch& watch) {
  return caught(path, [&] { return read(path, job, dates, watch); });
}

}  // namespace soakwright
