// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/printed_time.h"

#include "core/units/local_time.h"
#include "core/units/number_text.h"

namespace soakwright {
namespace {

// More digits than any run has hours or days, and few enough that nanoseconds fit 64 bits.
constexpr std::size_t kMostDigits = 6;

bool take(std::string_view& text, std::string_view wanted) {
  if (!text.starts_with(wanted)) return false;
  text.remove_prefix(wanted.size());
  return true;
}

/// A whole number at the front of `text`; how many digits it has, 0 where there is none or too many.
std::size_t take_number(std::string_view& text, std::int64_t& value) {
  std::size_t digits = 0;
  value = 0;
  for (; digits < text.size() && text[digits] >= '0' && text[digits] <= '9'; ++digits) {
    if (digits == kMostDigits) return 0;
    value = value * 10 + (text[digits] - '0');
  }
  text.remove_prefix(digits);
  return digits;
}

bool take_fraction(std::string_view& text, std::int64_t& nanoseconds) {
  if (!take(text, ".")) return true;
  std::int64_t unit = kNanosecondsPerSecond;
  if (text.empty()) return false;
  for (; !text.empty() && text.front() >= '0' && text.front() <= '9'; text.remove_prefix(1)) {
    unit /= 10;
    nanoseconds += (text.front() - '0') * unit;
  }
  return true;
}

}  // namespace

std::optional<PrintedTime> parse_printed_time(std::string_view text) {
  text = trimmed(text);
  const bool negative = take(text, "-") || take(text, "−");
  const bool plus = !negative && take(text, "+");
  std::int64_t days = 0;
  std::int64_t hours = 0;
  std::int64_t minutes = 0;
  std::int64_t seconds = 0;
  std::int64_t nanoseconds = 0;
  if (take_number(text, hours) == 0) return std::nullopt;
  const std::string_view behind = trimmed(text);
  const bool has_days = behind.starts_with("d");
  if (has_days) {
    days = negative ? -hours : hours;
    text = trimmed(behind.substr(1));
    if (take_number(text, hours) == 0 || hours > 23) return std::nullopt;
  } else if (plus) {
    return std::nullopt;
  }
  if (!take(text, ":") || take_number(text, minutes) != 2 || minutes > 59) return std::nullopt;
  const bool has_seconds = take(text, ":");
  if (has_seconds && (take_number(text, seconds) != 2 || seconds > 59 || !take_fraction(text, nanoseconds)))
    return std::nullopt;
  if (!text.empty()) return std::nullopt;
  const std::int64_t clock = ((hours * 60 + minutes) * 60 + seconds) * kNanosecondsPerSecond + nanoseconds;
  if (days > 9999 || days < -9999) return std::nullopt;
  return PrintedTime{days * kNanosecondsPerDay + (negative && !has_days ? -clock : clock), has_seconds};
}

}  // namespace soakwright
