// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/clock/recorder_clock.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace soakwright {
namespace {

std::int64_t floor_to(std::int64_t value, std::int64_t unit) {
  const std::int64_t rest = value % unit;
  return rest < 0 ? value - rest - unit : value - rest;
}

std::int64_t nanoseconds(double seconds) {
  return std::llround(seconds * static_cast<double>(kNanosecondsPerSecond));
}

/// To the nearest digit that is printed, so that 59.9996 s never prints as :60.
std::int64_t rounded_to_digits(std::int64_t ns, int digits) {
  std::int64_t tick = kNanosecondsPerSecond;
  for (int i = 0; i < (digits < 0 ? 3 : digits); ++i) tick /= 10;
  return floor_to(ns + tick / 2, tick);
}

/// `ns` is not negative. Hours have at least `hour_digits` digits.
std::string clock_text(std::int64_t ns, int digits, int hour_digits) {
  const std::int64_t seconds = ns / kNanosecondsPerSecond;
  std::string text =
      fmt::format("{:0{}}:{:02}:{:02}", seconds / 3600, hour_digits, seconds / 60 % 60, seconds % 60);
  std::int64_t fraction = ns % kNanosecondsPerSecond;
  if (digits < 0) digits = fraction != 0 ? 3 : 0;
  if (digits == 0) return text;
  for (int i = digits; i < 9; ++i) fraction /= 10;
  return text + fmt::format(".{:0{}}", fraction, digits);
}

RecorderClock::Parts parts_of(RecorderClock::Kind kind, std::int64_t shown_ns, int digits) {
  const std::int64_t ns = rounded_to_digits(shown_ns, digits);
  if (kind == RecorderClock::Kind::elapsed)
    return {"", (ns < 0 ? "−" : "") + clock_text(ns < 0 ? -ns : ns, digits, 1)};
  const std::int64_t midnight = floor_to(ns, kNanosecondsPerDay);
  const std::string time = clock_text(ns - midnight, digits, 2);
  if (kind == RecorderClock::Kind::dated)
    return {LocalTime::of_nanoseconds(midnight).iso().substr(0, 10), time};
  const std::int64_t days = midnight / kNanosecondsPerDay;
  if (days == 0) return {"", time};
  return {days > 0 ? fmt::format("+{} d", days) : fmt::format("−{} d", -days), time};
}

}  // namespace

void RecorderClock::put(double from_s, std::int64_t shown_ns) {
  if (pieces_.back().from_s >= from_s)
    pieces_.back().shown_ns = shown_ns;
  else
    pieces_.push_back({from_s, shown_ns});
}

std::size_t RecorderClock::piece_at(double at_s) const {
  const auto after =
      std::upper_bound(pieces_.begin() + 1, pieces_.end(), at_s,
                       [](double wanted, const Piece& piece) { return wanted < piece.from_s; });
  return static_cast<std::size_t>(after - pieces_.begin()) - 1;
}

std::int64_t RecorderClock::shown_ns(double at_s) const {
  const Piece& piece = pieces_[piece_at(at_s)];
  return piece.shown_ns + nanoseconds(at_s - piece.from_s);
}

std::optional<LocalTime> RecorderClock::local_time(double at_s) const {
  if (kind_ != Kind::dated) return std::nullopt;
  return LocalTime::of_nanoseconds(shown_ns(at_s));
}

RecorderClock::Parts RecorderClock::parts(double at_s, int digits) const {
  return parts_of(kind_, shown_ns(at_s), digits);
}

std::string RecorderClock::text(double at_s, int digits) const {
  const Parts shown = parts(at_s, digits);
  return shown.day.empty() ? shown.time : shown.day + " " + shown.time;
}

std::string RecorderClock::iso(double at_s) const {
  if (kind_ == Kind::dated) return LocalTime::of_nanoseconds(shown_ns(at_s)).iso();
  std::string text = this->text(at_s, kAsNeeded);
  constexpr std::string_view kMinus = "−";
  if (text.starts_with(kMinus)) text.replace(0, kMinus.size(), "-");
  return text;
}

std::vector<double> RecorderClock::places_of(std::int64_t wanted_ns) const {
  std::vector<double> places;
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    const Piece& piece = pieces_[i];
    const double at_s = piece.from_s + static_cast<double>(wanted_ns - piece.shown_ns) /
                                           static_cast<double>(kNanosecondsPerSecond);
    const bool from_here = i == 0 || at_s >= piece.from_s;
    const bool to_here = i + 1 == pieces_.size() || at_s < pieces_[i + 1].from_s;
    if (from_here && to_here) places.push_back(at_s);
  }
  for (std::size_t i = 1; i < pieces_.size() && places.empty(); ++i)
    if (pieces_[i - 1].shown_ns + nanoseconds(pieces_[i].from_s - pieces_[i - 1].from_s) <= wanted_ns &&
        wanted_ns < pieces_[i].shown_ns)
      places.push_back(pieces_[i].from_s);
  return places;
}

std::vector<double> RecorderClock::round_moments(double from_s, double to_s, double step_s) const {
  constexpr double kSlack = 1e-9;  // of a step: what is left where whole numbers of steps become seconds
  const std::int64_t origin_ns =
      kind_ == Kind::elapsed ? 0 : floor_to(pieces_.front().shown_ns, kNanosecondsPerDay);
  std::vector<double> moments;
  for (std::size_t i = piece_at(from_s); i < pieces_.size() && pieces_[i].from_s <= to_s; ++i) {
    const Piece& piece = pieces_[i];
    const double shift_s =
        static_cast<double>(piece.shown_ns - origin_ns) / static_cast<double>(kNanosecondsPerSecond) -
        piece.from_s;
    const double begin_s = i == 0 ? from_s : std::max(from_s, piece.from_s);
    const double end_s = i + 1 < pieces_.size() ? std::min(to_s, pieces_[i + 1].from_s) : to_s;
    for (double n = std::ceil((begin_s + shift_s) / step_s - kSlack);
         n * step_s - shift_s <= end_s + kSlack * step_s; n += 1.0) {
      const double at_s = n * step_s - shift_s;
      if (moments.empty() || at_s - moments.back() >= 0.5 * step_s) moments.push_back(at_s);
    }
  }
  return moments;
}

}  // namespace soakwright
