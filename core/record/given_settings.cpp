// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/given_settings.h"

#include <string>
#include <utility>
#include <variant>

#include "core/procedure/job/job_words.h"
#include "core/record/job_columns.h"
#include "core/units/number_text.h"

namespace soakwright {
namespace {

FieldOrder field_order(DateOrder order) {
  switch (order) {
    case DateOrder::dmy:
      return FieldOrder::dmy;
    case DateOrder::mdy:
      return FieldOrder::mdy;
    case DateOrder::ymd:
      break;
  }
  return FieldOrder::ymd;
}

TextEncoding text_encoding(LogEncoding encoding) {
  switch (encoding) {
    case LogEncoding::utf_8:
      return TextEncoding::utf_8;
    case LogEncoding::utf_16_le:
      return TextEncoding::utf_16_le;
    case LogEncoding::utf_16_be:
      return TextEncoding::utf_16_be;
    case LogEncoding::windows_1252:
      break;
  }
  return TextEncoding::windows_1252;
}

TimeKind time_kind(TimeMeaning time) {
  switch (time) {
    case TimeMeaning::date_time:
      return TimeKind::date_time;
    case TimeMeaning::time_of_day:
      return TimeKind::time_of_day;
    case TimeMeaning::elapsed_s:
      return TimeKind::elapsed_s;
    case TimeMeaning::elapsed_min:
      return TimeKind::elapsed_min;
    case TimeMeaning::elapsed_h:
      return TimeKind::elapsed_h;
    case TimeMeaning::elapsed_hms:
      return TimeKind::elapsed_hms;
    case TimeMeaning::serial_days:
      return TimeKind::serial_days;
    case TimeMeaning::unix_s:
      return TimeKind::unix_s;
    case TimeMeaning::unix_ms:
      break;
  }
  return TimeKind::unix_ms;
}

std::string delimiter_word(char delimiter) {
  if (delimiter == '\t') return "tab";
  return delimiter == ' ' ? "spaces" : std::string(1, delimiter);
}

/// The role as the job writes it, where it makes another kind of column of one than the log does.
std::optional<std::string> other_kind(const ThermocoupleEntry& entry, const ColumnKind& found) {
  const bool trace = entry.role == ThermocoupleRole::control || entry.role == ThermocoupleRole::monitor ||
                     entry.role == ThermocoupleRole::spare;
  if (trace && found.temperature) return std::nullopt;
  return std::string{kRoleWords.of(entry.role)};
}

void add_entry(const ThermocoupleEntry& entry, const LogColumn& column, const ColumnKind& found,
               std::vector<HandChange>& changes) {
  const auto add = [&](const char* key, std::string value) {
    changes.push_back({key, std::move(value), column.number, column.name});
  };
  if (entry.name && *entry.name != column.name) add("name", *entry.name);
  if (entry.unit && said_unit(column) != entry.unit)
    add("unit", std::string{kChannelUnitWords.of(*entry.unit)});
  if (const auto role = other_kind(entry, found)) add("role", *role);
  const bool emf = entry.unit.value_or(found.unit) == ChannelUnit::millivolt;
  if (!emf) return;
  if (entry.type) add("type", std::string{kThermocoupleTypeWords.of(*entry.type)});
  if (!entry.cold_junction) return;
  if (const auto* fixed = std::get_if<Temperature>(&*entry.cold_junction))
    add("cold_junction", number_text(fixed->celsius()) + " C");
  else
    add("cold_junction", std::get<std::string>(*entry.cold_junction));
}

}  // namespace

GivenSettings given_settings(const Job* job, std::optional<DateOrder> dates) {
  GivenSettings given;
  if (job != nullptr) {
    const ImportChoices& reading = job->reading;
    if (reading.encoding) given.encoding = text_encoding(*reading.encoding);
    if (reading.time) given.time = time_kind(*reading.time);
    given.delimiter = reading.delimiter;
    given.decimal = reading.decimal;
    given.header_line = reading.header_line;
    given.time_column = reading.time_column;
    if (!dates) dates = reading.dates;
  }
  if (dates) given.dates = field_order(*dates);
  return given;
}

std::vector<HandChange> hand_changes(const GivenSettings& given, const Job* job, const LogTable& table,
                                     std::span<const ColumnKind> kinds) {
  std::vector<HandChange> changes;
  const auto add = [&](const char* key, std::string value) {
    changes.push_back({key, std::move(value), std::nullopt, {}});
  };
  if (given.encoding) add("encoding", std::string{name_of(*given.encoding)});
  if (given.delimiter) add("delimiter", delimiter_word(*given.delimiter));
  if (given.decimal) add("decimal", std::string(1, *given.decimal));
  if (given.header_line) add("header_line", std::to_string(*given.header_line));
  if (given.time_column) add("time_column", *given.time_column);
  if (given.time) add("time", std::string{name_of(*given.time)});
  if (given.dates && table.dates) add("dates", std::string{name_of(*given.dates)});
  if (job == nullptr) return changes;
  if (const auto& date = job->reading.date)
    add("date", LocalTime::of(*date, 0, 0, 0).value_or(LocalTime{}).iso().substr(0, 10));
  if (job->reading.start) add("start", job->reading.start->iso());
  if (job->reading.unit) add("unit", std::string{kChannelUnitWords.of(*job->reading.unit)});
  if (job->reading.unlisted_off.value_or(false)) add("unlisted", "off");
  if (job->reading.clock_forward) add("clock_forward", job->reading.clock_forward->iso());
  if (const auto columns = columns_of_entries(table, *job))
    for (std::size_t e = 0; e < columns.value().size(); ++e)
      add_entry(job->thermocouples[e], table.columns[columns.value()[e]], kinds[columns.value()[e]], changes);
  return changes;
}

}  // namespace soakwright
