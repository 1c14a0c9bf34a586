// SPDX-License-Identifier: GPL-3.0-or-later
// What the recorder's clock showed along the time axis of a record, as text and back again.
//
// The axis counts seconds from the first sample and only runs forward. The clock may have been put back or
// forward on the way: a moment is always said as the recorder showed it then.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/units/local_time.h"

namespace soakwright {

class RecorderClock {
 public:
  enum class Kind {
    dated,        ///< shows date and time
    time_of_day,  ///< shows a time of day; days are counted from the first sample's
    elapsed,      ///< counts from some zero of its own
  };
  /// As many digits behind the second as it needs, three at most.
  static constexpr int kAsNeeded = -1;

  /// Elapsed time, 0 at the first sample.
  RecorderClock() : RecorderClock(Kind::elapsed, 0) {}
  /// `first_shown_ns`: what it shows at the first sample: since 1970 (dated), since midnight of the first day
  /// (time of day), since its zero (elapsed).
  RecorderClock(Kind kind, std::int64_t first_shown_ns) : kind_(kind), pieces_{{0.0, first_shown_ns}} {}
  static RecorderClock dated(LocalTime first) { return {Kind::dated, first.nanoseconds()}; }

  /// From `from_s` on it shows `shown_ns` and what follows. In rising order.
  void put(double from_s, std::int64_t shown_ns);

  [[nodiscard]] Kind kind() const { return kind_; }
  /// What it shows, counted as `first_shown_ns` is.
  [[nodiscard]] std::int64_t shown_ns(double at_s) const;
  /// Nullopt if the clock shows no date.
  [[nodiscard]] std::optional<LocalTime> local_time(double at_s) const;

  /// For people: "2031-04-02 13:10:05"; "13:10:05", from midnight on "+1 d 00:10:00"; "0:12:27". `digits`
  /// behind the second.
  [[nodiscard]] std::string text(double at_s, int digits = 0) const;
  /// The same for files: 2031-04-02T13:10:05.250, an ASCII minus.
  [[nodiscard]] std::string iso(double at_s) const;
  /// The two parts of text(): "2031-04-02", "+1 d" or nothing; and the time.
  struct Parts {
    std::string day, time;
  };
  [[nodiscard]] Parts parts(double at_s, int digits = 0) const;

  /// Where on the axis it shows this, rising: more than one place where the clock was put back. Where it was
  /// put forward over it, the place at which it was.
  [[nodiscard]] std::vector<double> places_of(std::int64_t shown_ns) const;
  /// Where on the axis between the two it shows a multiple of `step_s` since midnight (elapsed: since its
  /// zero); where the clock was put back or forward, none closer together than half a step.
  [[nodiscard]] std::vector<double> round_moments(double from_s, double to_s, double step_s) const;

  bool operator==(const RecorderClock&) const = default;

 private:
  struct Piece {
    double from_s = 0.0;
    std::int64_t shown_ns = 0;  ///< at from_s
    bool operator==(const Piece&) const = default;
  };
  [[nodiscard]] std::size_t piece_at(double at_s) const;

  Kind kind_;
  std::vector<Piece> pieces_;
};

}  // namespace soakwright
