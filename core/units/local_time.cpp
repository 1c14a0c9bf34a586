// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/local_time.h"

#include <chrono>
#include <cmath>
#include <cstdio>

namespace soakwright {
namespace {

constexpr std::int64_t kSecondsPerDay = 86'400;

std::int64_t floor_divide(std::int64_t a, std::int64_t b) {
  const std::int64_t quotient = a / b;
  return (a % b != 0 && (a < 0) != (b < 0)) ? quotient - 1 : quotient;
}

/// Takes `digits` digits off the front of `text`.
bool take_digits(std::string_view& text, std::size_t digits, int& value) {
  if (text.size() < digits) return false;
  value = 0;
  for (std::size_t i = 0; i < digits; ++i) {
    if (text[i] < '0' || text[i] > '9') return false;
    value = value * 10 + (text[i] - '0');
  }
  text.remove_prefix(digits);
  return true;
}

bool take(std::string_view& text, char wanted) {
  if (text.empty() || text.front() != wanted) return false;
  text.remove_prefix(1);
  return true;
}

}  // namespace

std::int64_t days_from_civil(CivilDate date) {
  const std::chrono::year_month_day ymd{std::chrono::year{date.year},
                                        std::chrono::month{static_cast<unsigned>(date.month)},
                                        std::chrono::day{static_cast<unsigned>(date.day)}};
  return std::chrono::sys_days{ymd}.time_since_epoch().count();
}

CivilDate civil_from_days(std::int64_t days) {
  const std::chrono::year_month_day ymd{std::chrono::sys_days{std::chrono::days{static_cast<int>(days)}}};
  return {static_cast<int>(ymd.year()), static_cast<int>(static_cast<unsigned>(ymd.month())),
          static_cast<int>(static_cast<unsigned>(ymd.day()))};
}

bool date_exists(CivilDate date) {
  if (date.year < 1678 || date.year > 2261 || date.month < 1 || date.month > 12 || date.day < 1) return false;
  return std::chrono::year_month_day{std::chrono::year{date.year},
                                     std::chrono::month{static_cast<unsigned>(date.month)},
                                     std::chrono::day{static_cast<unsigned>(date.day)}}
      .ok();
}

std::optional<LocalTime> LocalTime::of(CivilDate date, int hour, int minute, int second,
                                       std::int64_t nanosecond) {
  if (!date_exists(date) || hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 59)
    return std::nullopt;
  const std::int64_t seconds =
      days_from_civil(date) * kSecondsPerDay + hour * std::int64_t{3600} + minute * std::int64_t{60} + second;
  return LocalTime{seconds * kNanosecondsPerSecond + nanosecond};
}

CivilDate LocalTime::date() const {
  return civil_from_days(floor_divide(nanoseconds_, kSecondsPerDay * kNanosecondsPerSecond));
}

LocalTime LocalTime::plus_seconds(double seconds) const {
  return LocalTime{nanoseconds_ + std::llround(seconds * static_cast<double>(kNanosecondsPerSecond))};
}

double LocalTime::seconds_since(LocalTime earlier) const {
  return static_cast<double>(nanoseconds_ - earlier.nanoseconds_) /
         static_cast<double>(kNanosecondsPerSecond);
}

std::string LocalTime::iso() const {
  // Milliseconds are as fine as a person reads a chart; rounding first keeps 59.9996 s from printing as 60.
  const std::int64_t milliseconds = floor_divide(nanoseconds_ + 500'000, 1'000'000);
  const std::int64_t seconds = floor_divide(milliseconds, 1000);
  const std::int64_t days = floor_divide(seconds, kSecondsPerDay);
  const auto in_day = static_cast<int>(seconds - days * kSecondsPerDay);
  const auto fraction = static_cast<int>(milliseconds - seconds * 1000);
  const CivilDate date = civil_from_days(days);
  char text[48];
  int length = std::snprintf(text, sizeof text, "%04d-%02d-%02dT%02d:%02d:%02d", date.year, date.month,
                             date.day, in_day / 3600, in_day / 60 % 60, in_day % 60);
  if (fraction != 0 && length > 0)
    length += std::snprintf(text + length, sizeof text - static_cast<std::size_t>(length), ".%03d", fraction);
  return {text, static_cast<std::size_t>(length)};
}

std::optional<LocalTime> parse_local_time(std::string_view text) {
  CivilDate date;
  int hour = 0;
  int minute = 0;
  int second = 0;
  std::int64_t nanosecond = 0;
  if (!take_digits(text, 4, date.year) || !take(text, '-') || !take_digits(text, 2, date.month) ||
      !take(text, '-') || !take_digits(text, 2, date.day))
    return std::nullopt;
  if (!text.empty()) {
    if (!take(text, 'T') && !take(text, ' ')) return std::nullopt;
    if (!take_digits(text, 2, hour) || !take(text, ':') || !take_digits(text, 2, minute)) return std::nullopt;
    if (take(text, ':')) {
      if (!take_digits(text, 2, second)) return std::nullopt;
      if (take(text, '.')) {
        std::int64_t unit = kNanosecondsPerSecond;
        if (text.empty()) return std::nullopt;
        for (; !text.empty() && text.front() >= '0' && text.front() <= '9'; text.remove_prefix(1)) {
          unit /= 10;
          nanosecond += (text.front() - '0') * unit;
        }
      }
    }
  }
  if (!text.empty()) return std::nullopt;
  return LocalTime::of(date, hour, minute, second, nanosecond);
}

}  // namespace soakwright
