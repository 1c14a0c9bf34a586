// SPDX-License-Identifier: GPL-3.0-or-later
// The words in which the times of a log, or what a job says of them, are refused.
#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "core/problems/problem.h"
#include "core/procedure/job/job.h"
#include "core/read/reading_settings.h"
#include "core/record/clock/recorder_clock.h"

namespace soakwright {

// Of the log; `line` is that of the log.
Problem one_time_only(const std::string& path, std::size_t line);
Problem time_only_backward(const std::string& path, std::size_t line);
/// In `backward` of `rows` rows, at `line` for the first time.
Problem time_not_forward(const std::string& path, std::size_t line, std::size_t backward, std::size_t rows);
Problem times_far_apart(const std::string& path, std::size_t line);
/// The row of `line` has the time of that of `earlier_line`.
Problem overlap_that_differs(const std::string& path, std::size_t line, std::size_t earlier_line);

// Of [import] of the job.
Problem date_not_needed(const Job& job, TimeKind kind);
Problem start_not_needed(const Job& job, TimeKind kind);
/// `other_line`: where the log has such a step, if it has one.
Problem no_step_of_an_hour(const Job& job, LocalTime moment, const std::string& path,
                           std::optional<std::size_t> other_line);

/// A place of the job, and the clock that its times are on.
struct JobLine {
  const Job& job;
  std::size_t line = 0;
  RecorderClock::Kind clock = RecorderClock::Kind::elapsed;
};

// Of moments of the job.
Problem time_never_shown(const JobLine& at);
Problem ends_before_it_begins(const JobLine& at);
Problem date_without_dates(const JobLine& at);
/// `example` is a date and time as the log prints them.
Problem time_without_date(const JobLine& at, const std::string& example);
Problem elapsed_without_seconds(const JobLine& at);

/// From where to where the record runs, as the recorder showed it.
struct RecordEnds {
  std::string from, to;
};
Problem exclusion_outside_record(const JobLine& at, const std::string& column, const RecordEnds& record);
Problem remark_outside_record(const JobLine& at, const RecordEnds& record);
Problem time_range_outside_record(const JobLine& at, const RecordEnds& record);
Problem time_range_too_short(const JobLine& at, const std::string& path);
Problem confirmed_column_not_evaluated(const JobLine& at, const std::string& column);

}  // namespace soakwright
