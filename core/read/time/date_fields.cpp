// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/time/date_fields.h"

#include "core/units/local_time.h"

namespace soakwright {
namespace {

// No log is older, and any two times in nanoseconds still have a difference that fits 64 bits.
constexpr int kFirstYear = 1900;
constexpr int kLastYear = 2100;

std::optional<int> full_year(int value, int digits) {
  if (digits >= 4) return value;
  if (digits > 2) return std::nullopt;
  return value < 70 ? 2000 + value : 1900 + value;  // the pivot of POSIX strptime %y
}

}  // namespace

bool order_is_possible(const DateFields& fields, FieldOrder order) {
  const bool year_first = fields.first_digits == 4;
  const bool year_last = fields.third_digits == 4;
  switch (order) {
    case FieldOrder::ymd:
      return !year_last && (fields.month_place == -1 || (fields.month_place == 1 && year_first));
    case FieldOrder::dmy:
      return !year_first && (fields.month_place == -1 || fields.month_place == 1);
    case FieldOrder::mdy:
      return !year_first && (fields.month_place == -1 || fields.month_place == 0);
  }
  return false;
}

std::optional<std::int64_t> day_number(const DateFields& fields, FieldOrder order) {
  if (!order_is_possible(fields, order)) return std::nullopt;
  CivilDate date;
  std::optional<int> year;
  if (order == FieldOrder::ymd) {
    year = full_year(fields.first, fields.first_digits);
    date.month = fields.second;
    date.day = fields.third;
  } else {
    year = full_year(fields.third, fields.third_digits);
    date.month = order == FieldOrder::dmy ? fields.second : fields.first;
    date.day = order == FieldOrder::dmy ? fields.first : fields.second;
  }
  if (!year || *year < kFirstYear || *year > kLastYear) return std::nullopt;
  date.year = *year;
  if (!date_exists(date)) return std::nullopt;
  return days_from_civil(date);
}

}  // namespace soakwright
