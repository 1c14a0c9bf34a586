// SPDX-License-Identifier: GPL-3.0-or-later
// A moment on the recorder's own clock, as the log prints it: a civil date and time without a zone.
//
// Counted in nanoseconds from 1970-01-01T00:00:00 of the same clock, so that moments are exact integers
// and differences never round. Range: years 1678 to 2261.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace soakwright {

inline constexpr std::int64_t kNanosecondsPerMillisecond = 1'000'000;
inline constexpr std::int64_t kNanosecondsPerSecond = 1'000'000'000;
inline constexpr std::int64_t kNanosecondsPerDay = 86'400 * kNanosecondsPerSecond;

struct CivilDate {
  int year = 1970;
  int month = 1;  ///< 1 to 12
  int day = 1;    ///< 1 to 31
  auto operator<=>(const CivilDate&) const = default;
};

class LocalTime {
 public:
  constexpr LocalTime() = default;
  static constexpr LocalTime of_nanoseconds(std::int64_t nanoseconds) { return LocalTime{nanoseconds}; }
  /// Nullopt if the date does not exist (31 April, 29 February of a common year, hour 24 …).
  static std::optional<LocalTime> of(CivilDate date, int hour, int minute, int second,
                                     std::int64_t nanosecond = 0);
  [[nodiscard]] constexpr std::int64_t nanoseconds() const { return nanoseconds_; }
  [[nodiscard]] CivilDate date() const;
  /// This moment and `seconds` more, to the nearest nanosecond.
  [[nodiscard]] LocalTime plus_seconds(double seconds) const;
  /// Seconds from `earlier` to here.
  [[nodiscard]] double seconds_since(LocalTime earlier) const;
  /// ISO 8601 without a zone: 2031-04-02T06:00:00, with milliseconds where the second is not whole.
  [[nodiscard]] std::string iso() const;
  // clang-tidy 14 takes the 0 that this compares with for a pointer.
  constexpr auto operator<=>(const LocalTime&) const = default;  // NOLINT(modernize-use-nullptr)

 private:
  constexpr explicit LocalTime(std::int64_t nanoseconds) : nanoseconds_(nanoseconds) {}
  std::int64_t nanoseconds_ = 0;
};

/// Days from 1970-01-01 in the proleptic Gregorian calendar (H. Hinnant, "chrono-compatible low-level
/// date algorithms", days_from_civil).
std::int64_t days_from_civil(CivilDate date);
CivilDate civil_from_days(std::int64_t days);
bool date_exists(CivilDate date);

/// Reads `2031-04-02 13:10`, `2031-04-02T13:10:05.5` and the like: what the job file uses.
std::optional<LocalTime> parse_local_time(std::string_view text);

}  // namespace soakwright
