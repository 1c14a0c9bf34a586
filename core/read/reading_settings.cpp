// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/reading_settings.h"

namespace soakwright {

std::string_view name_of(TextEncoding encoding) {
  switch (encoding) {
    case TextEncoding::utf_8:
      return "utf-8";
    case TextEncoding::utf_16_le:
      return "utf-16le";
    case TextEncoding::utf_16_be:
      return "utf-16be";
    case TextEncoding::windows_1252:
      return "windows-1252";
  }
  return "";
}

std::string_view name_of(FieldOrder order) {
  switch (order) {
    case FieldOrder::dmy:
      return "dmy";
    case FieldOrder::mdy:
      return "mdy";
    case FieldOrder::ymd:
      return "ymd";
  }
  return "";
}

std::string_view name_of(TimeKind kind) {
  switch (kind) {
    case TimeKind::date_time:
      return "date and time";
    case TimeKind::time_of_day:
      return "time of day";
    case TimeKind::elapsed_s:
      return "elapsed s";
    case TimeKind::elapsed_min:
      return "elapsed min";
    case TimeKind::elapsed_h:
      return "elapsed h";
    case TimeKind::elapsed_hms:
      return "elapsed h:mm:ss";
    case TimeKind::serial_days:
      return "serial days";
    case TimeKind::unix_s:
      return "unix s";
    case TimeKind::unix_ms:
      return "unix ms";
  }
  return "";
}

bool has_date(TimeKind kind) {
  return kind == TimeKind::date_time || kind == TimeKind::serial_days || kind == TimeKind::unix_s ||
         kind == TimeKind::unix_ms;
}

}  // namespace soakwright
