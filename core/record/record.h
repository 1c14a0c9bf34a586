// SPDX-License-Identifier: GPL-3.0-or-later
// One log read in, with what the job says about its channels: the value that everything after it reads.
//
// Immutable and shared. Times are seconds from the log's first sample, on one axis for all channels.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "core/procedure/job/job.h"
#include "core/record/clock/recorder_clock.h"
#include "core/record/readings.h"
#include "core/units/column_content.h"
#include "core/units/local_time.h"
#include "core/units/setting.h"
#include "core/units/statement.h"

namespace soakwright {

/// Something odd about the file that a reader should know; never an error.
struct Notice {
  std::string code;  ///< "gap", "midnight" …
  std::size_t line = 0;
  std::size_t count = 0;
  std::optional<std::string> channel;
  Statement what;  ///< core/wording has its words
  bool operator==(const Notice&) const = default;
};

/// Something that a person settled otherwise than the file says, or where it says nothing.
struct HandChange {
  std::string key;                    ///< as the job names it: delimiter, unit …
  std::string value;                  ///< as the job writes it
  std::optional<std::size_t> column;  ///< in the file, from 1; none: the whole file
  std::string name;                   ///< of the column
  bool operator==(const HandChange&) const = default;
};

/// How the file was read.
struct Reading {
  Setting<std::string> encoding, delimiter, decimal, dates, time, time_column;
  Setting<std::size_t> header_line;       ///< 0 where there is none
  std::vector<std::size_t> time_columns;  ///< in the file, from 1
  std::vector<HandChange> changed_by_hand;
  std::vector<std::string> heading;
};

/// One thermocouple's trace.
struct Channel {
  std::size_t column = 0;  ///< in the file, from 1
  std::string name;
  ChannelUnit unit = ChannelUnit::celsius;
  ThermocoupleRole role = ThermocoupleRole::monitor;
  Zone zone = Zone::soak;
  std::optional<std::string> weld;
  std::optional<double> position_m;
  std::optional<double> angle_deg;
  std::optional<std::size_t> spare_for;  ///< index of the channel
  std::optional<std::size_t> entry;      ///< index into Job::thermocouples
  Readings readings;
  std::optional<double> min_c, max_c;
  [[nodiscard]] bool evaluated() const {
    return (role == ThermocoupleRole::control || role == ThermocoupleRole::monitor) && zone == Zone::soak;
  }
};

struct OtherColumn {
  std::size_t column = 0;
  std::string name;
  ColumnReason why;
  std::optional<Readings> readings =
      std::nullopt;  ///< where it is a temperature all the same: a set point, a cold junction
  std::optional<std::size_t> entry = std::nullopt;  ///< index into Job::thermocouples
};

/// Part of a channel that a person excluded, both ends included.
struct Exclusion {
  std::size_t channel = 0;  ///< index
  double from_s = 0.0;
  double to_s = 0.0;
  std::string reason;
};

/// Readings that a person confirms though the program suspects them.
struct Confirmation {
  std::size_t channel = 0;  ///< index
  std::string suspect;      ///< open, stuck, copied, clipped
  std::string reason;
};

struct Period {
  std::string name;
  double from_s = 0.0;
  double to_s = 0.0;
};

struct Remark {
  double at_s = 0.0;
  std::string text;
};

struct Record {
  std::string file;  ///< base name
  std::string sha256;
  std::uint64_t bytes = 0;
  Reading reading;
  RecorderClock clock;
  std::vector<double> times_s;      ///< strictly rising from 0
  double interval_s = 0.0;          ///< the median step
  std::vector<std::size_t> breaks;  ///< rows r where nothing joins r and r + 1 (a clock fault), ascending
  std::vector<Channel> channels;
  std::vector<OtherColumn> other_columns;
  std::vector<Notice> notices;
  std::vector<Exclusion> exclusions;
  std::vector<Confirmation> confirmations;
  std::vector<Period> periods;
  std::vector<Remark> remarks;
  std::size_t first_row = 0;  ///< the part to be evaluated: rows [first_row, end_row)
  std::size_t end_row = 0;

  [[nodiscard]] std::size_t rows() const { return times_s.size(); }
  [[nodiscard]] double duration_s() const { return times_s.empty() ? 0.0 : times_s.back() - times_s.front(); }
  [[nodiscard]] double begin_s() const { return times_s[first_row]; }
  [[nodiscard]] double end_s() const { return times_s[end_row - 1]; }
  [[nodiscard]] std::span<const double> evaluated_times_s() const {
    return std::span<const double>{times_s}.subspan(first_row, end_row - first_row);
  }
  /// What the recorder showed at a moment, where it showed a date.
  [[nodiscard]] std::optional<LocalTime> local_time(double at_s) const { return clock.local_time(at_s); }
  /// A moment as the recorder showed it: the one text for it, wherever it is said to people.
  [[nodiscard]] std::string moment_text(double at_s, int digits = 0) const {
    return clock.text(at_s, digits);
  }
};

}  // namespace soakwright
