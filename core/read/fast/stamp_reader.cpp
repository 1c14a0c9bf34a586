// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/fast/stamp_reader.h"

#include <algorithm>
#include <cmath>
#include <cstring>

#include "core/read/cell.h"
#include "core/units/local_time.h"

namespace soakwright {
namespace {

constexpr std::size_t kClockLength = 8;  // HH:MM:SS
constexpr std::int64_t kSerialDayOf1970 = 25'569;

/// HH:MM:SS at the front of `text`, which is at least that long.
bool plain_clock(const char* text, std::int64_t& seconds) {
  const auto digit = [text](std::size_t at) { return static_cast<unsigned>(text[at]) - '0'; };
  const unsigned h1 = digit(0), h2 = digit(1), m1 = digit(3), m2 = digit(4), s1 = digit(6), s2 = digit(7);
  if (text[2] != ':' || text[5] != ':' || h1 > 2 || h2 > 9 || m1 > 5 || m2 > 9 || s1 > 5 || s2 > 9)
    return false;
  const unsigned hours = h1 * 10 + h2;
  if (hours > 23) return false;
  seconds = hours * 3600 + (m1 * 10 + m2) * 60 + s1 * 10 + s2;
  return true;
}

__extension__ using Wide = __int128;

/// mantissa / 10^places times `unit`, rounded to the nearest nanosecond; false where that does not fit.
bool scaled(const Cell& cell, std::int64_t unit, std::int64_t& out) {
  const Wide numerator = static_cast<Wide>(cell.mantissa) * unit;
  const Wide divisor = power_of_ten(cell.places);
  const Wide half = numerator < 0 ? -divisor / 2 : divisor / 2;
  const Wide result = (numerator + half) / divisor;
  constexpr std::int64_t kBound = INT64_MAX / 4;  // differences must fit too
  if (result > kBound || result < -kBound) return false;
  out = static_cast<std::int64_t>(result);
  return true;
}

}  // namespace

bool StampReader::read(const std::string_view* parts, std::int64_t& stamp) {
  switch (plan_.time.kind) {
    case TimeKind::date_time:
      return read_date_and_clock(parts, stamp);
    case TimeKind::time_of_day:
      return read_clock(parts, stamp);
    case TimeKind::elapsed_hms: {
      const auto elapsed = parse_elapsed(without_spaces(parts[0]));
      if (elapsed) stamp = *elapsed;
      return elapsed.has_value();
    }
    default:
      return read_number(parts[0], stamp);
  }
}

bool StampReader::read_date_and_clock(const std::string_view* parts, std::int64_t& stamp) {
  const std::size_t count = plan_.time.cells.size();
  if (remembered_ && count <= 2) {
    std::string_view clock = parts[count - 1];
    bool same_date = false;
    if (count == 1) {
      same_date = clock.size() >= last_date_.size() &&
                  std::memcmp(clock.data(), last_date_.data(), last_date_.size()) == 0;
      if (same_date) clock.remove_prefix(last_date_.size());
    } else {
      same_date = parts[0] == last_date_;
    }
    std::int64_t seconds = 0;
    if (same_date && clock.size() == kClockLength + last_tail_.size() && plain_clock(clock.data(), seconds) &&
        std::memcmp(clock.data() + kClockLength, last_tail_.data(), last_tail_.size()) == 0) {
      stamp = packed_stamp::pack(last_day_, seconds * kNanosecondsPerSecond + tail_ns_);
      return true;
    }
  }

  std::optional<Stamp> read;
  if (count == 1) {
    read = parse_stamp(without_spaces(parts[0]));
  } else {
    const auto date = parse_stamp(without_spaces(parts[0]));
    std::string clock_text{without_spaces(parts[1])};
    if (count == 3) clock_text.append(" ").append(without_spaces(parts[2]));
    read = parse_stamp(clock_text);
    if (!date || !date->date || !read) return false;
    read->date = date->date;
  }
  if (!read || !read->date || !read->clock_ns) return false;
  std::size_t day = 0;
  if (!day_index(*read->date, day)) return false;
  std::int64_t clock_ns = *read->clock_ns;
  if (read->offset_minutes)
    clock_ns -= (*read->offset_minutes - plan_.base_offset_minutes) * (60 * kNanosecondsPerSecond);
  stamp = packed_stamp::pack(day, clock_ns);

  remembered_ = false;
  if (!careful_ && !read->half_day) {
    if (count == 1 && without_spaces(parts[0]).data() == parts[0].data() && read->clock_at > 0)
      remember(parts[0].substr(0, read->clock_at), parts[0].substr(read->clock_at), day, clock_ns);
    else if (count == 2 && without_spaces(parts[1]).data() == parts[1].data())
      remember(parts[0], parts[1], day, clock_ns);
  }
  return true;
}

void StampReader::remember(std::string_view date_text, std::string_view clock_text, std::size_t day,
                           std::int64_t clock_ns) {
  std::int64_t seconds = 0;
  if (clock_text.size() < kClockLength || !plain_clock(clock_text.data(), seconds)) return;
  last_date_ = date_text;
  last_tail_ = clock_text.substr(kClockLength);
  last_day_ = day;
  tail_ns_ = clock_ns - seconds * kNanosecondsPerSecond;
  remembered_ = true;
}

bool StampReader::read_clock(const std::string_view* parts, std::int64_t& stamp) const {
  std::int64_t seconds = 0;
  if (!careful_ && plan_.time.cells.size() == 1 && parts[0].size() == kClockLength &&
      plain_clock(parts[0].data(), seconds)) {
    stamp = seconds * kNanosecondsPerSecond;
    return true;
  }
  std::string text{without_spaces(parts[0])};
  if (plan_.time.cells.size() == 2) text.append(" ").append(without_spaces(parts[1]));
  const auto read = parse_stamp(text);
  if (!read || read->date || !read->clock_ns) return false;
  stamp = *read->clock_ns;
  return true;
}

bool StampReader::read_number(std::string_view text, std::int64_t& stamp) const {
  const Cell cell = parse_cell(text, plan_.decimal);
  if (cell.kind != Cell::Kind::number || !cell.exact) return false;
  switch (plan_.time.kind) {
    case TimeKind::elapsed_min:
      return scaled(cell, 60 * kNanosecondsPerSecond, stamp);
    case TimeKind::elapsed_h:
      return scaled(cell, 3600 * kNanosecondsPerSecond, stamp);
    case TimeKind::unix_ms:
      return scaled(cell, kNanosecondsPerMillisecond, stamp);
    case TimeKind::serial_days: {
      Cell since_1970 = cell;
      const std::int64_t power = power_of_ten(cell.places);
      if (cell.mantissa < 0 || cell.mantissa / power > 200'000) return false;
      since_1970.mantissa -= kSerialDayOf1970 * power;
      if (!scaled(since_1970, kNanosecondsPerDay, stamp)) return false;
      // Ten places of a day are 9 us: what stands there is a whole millisecond that the places cut.
      constexpr int kPlacesOfMillisecond = 8;
      if (cell.places >= kPlacesOfMillisecond) {
        const std::int64_t half =
            stamp < 0 ? -kNanosecondsPerMillisecond / 2 : kNanosecondsPerMillisecond / 2;
        stamp = (stamp + half) / kNanosecondsPerMillisecond * kNanosecondsPerMillisecond;
      }
      return true;
    }
    default:
      return scaled(cell, kNanosecondsPerSecond, stamp);
  }
}

bool StampReader::day_index(const DateFields& date, std::size_t& index) {
  // Dates come in runs: the newest first.
  const auto found = std::find(days_.rbegin(), days_.rend(), date);
  if (found != days_.rend()) {
    index = static_cast<std::size_t>(days_.rend() - found) - 1;
    return true;
  }
  if (days_.size() == packed_stamp::kMostDays) return false;
  index = days_.size();
  days_.push_back(date);
  return true;
}

}  // namespace soakwright
