// SPDX-License-Identifier: GPL-3.0-or-later
// The settings by which a log is read. Each knows whether it was found in the file or given by a person; a
// guess never overrides what was given.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace soakwright {

enum class TextEncoding { utf_8, utf_16_le, utf_16_be, windows_1252 };
std::string_view name_of(TextEncoding encoding);

/// The order of the three numbers of a date.
enum class FieldOrder { dmy, mdy, ymd };
std::string_view name_of(FieldOrder order);

enum class TimeKind {
  date_time,
  time_of_day,
  elapsed_s,
  elapsed_min,
  elapsed_h,
  elapsed_hms,
  serial_days,
  unix_s,
  unix_ms,
};
std::string_view name_of(TimeKind kind);
/// The stamps are moments of a calendar.
bool has_date(TimeKind kind);

struct GivenSettings {
  std::optional<TextEncoding> encoding;
  std::optional<char> delimiter;
  std::optional<char> decimal;
  std::optional<FieldOrder> dates;
  std::optional<std::size_t> header_line;  ///< of the column names, from 1; 0: there is none
  std::optional<std::string> time_column;  ///< header cell, name without unit, or the column's number
  std::optional<TimeKind> time;
};

}  // namespace soakwright
