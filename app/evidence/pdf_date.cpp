// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/evidence/pdf_date.h"

#include <algorithm>
#include <cstdio>

#include "core/units/local_time.h"

namespace soakwright::evidence {
namespace {

// Four digits hold a year up to 9999; the core's moments end in 2261.
constexpr std::int64_t kEarliest = -9'000'000'000;
constexpr std::int64_t kLatest = 9'000'000'000;

std::string date_text_of(std::int64_t unix_s, const char* pattern) {
  const std::int64_t seconds = std::clamp(unix_s, kEarliest, kLatest);
  const CivilDate date = LocalTime::of_nanoseconds(seconds * kNanosecondsPerSecond).date();
  const std::int64_t of_day = seconds - 86'400 * days_from_civil(date);
  char text[64];
  std::snprintf(text, sizeof text, pattern, date.year, date.month, date.day, static_cast<int>(of_day / 3600),
                static_cast<int>(of_day / 60 % 60), static_cast<int>(of_day % 60));
  return text;
}

}  // namespace

PdfValue pdf_date(std::int64_t unix_s) {
  return PdfValue::of_bytes(date_text_of(unix_s, "D:%04d%02d%02d%02d%02d%02dZ"));
}

std::string utc_text(std::int64_t unix_s) {
  return date_text_of(unix_s, "%04d-%02d-%02d %02d:%02d:%02d UTC");
}

std::optional<std::int64_t> unix_time(const PdfValue& date) {
  int year = 0;
  int month = 0;
  int day = 0;
  int hour = 0;
  int minute = 0;
  int second = 0;
  if (!date.is(PdfValue::Kind::string) || date.text.size() != 17) return std::nullopt;
  if (std::sscanf(date.text.c_str(), "D:%4d%2d%2d%2d%2d%2dZ", &year, &month, &day, &hour, &minute, &second) !=
      6)
    return std::nullopt;
  const auto moment = LocalTime::of({year, month, day}, hour, minute, second);
  if (!moment) return std::nullopt;
  const std::int64_t unix_s = moment->nanoseconds() / kNanosecondsPerSecond;
  if (pdf_date(unix_s).text != date.text) return std::nullopt;
  return unix_s;
}

}  // namespace soakwright::evidence
