// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/clock/clock_problems.h"

#include <utility>

#include <fmt/format.h>

#include "core/problems/bad_input.h"

namespace soakwright {
namespace {

Problem in_job(const JobLine& at, std::string what, std::string help) {
  return bad_input(at.job.file, at.line, std::move(what), std::move(help));
}

Problem outside_record(const JobLine& at, const std::string& what, const RecordEnds& record) {
  return in_job(
      at, fmt::format("{} lies outside the record, which runs from {} to {}", what, record.from, record.to),
      at.clock == RecorderClock::Kind::time_of_day
          ? "correct its times; after midnight write \"+1 d\" before them"
          : "correct its times, or take it out");
}

}  // namespace

Problem one_time_only(const std::string& path, std::size_t line) {
  return bad_input(path, line, "all rows have the same time", "time must run forward");
}

Problem time_only_backward(const std::string& path, std::size_t line) {
  return bad_input(path, line, "time only runs backward", "sort the rows by time");
}

Problem time_not_forward(const std::string& path, std::size_t line, std::size_t backward, std::size_t rows) {
  return bad_input(
      path, line,
      fmt::format("time does not run forward in {} of {} rows, here for the first time", backward, rows),
      "sort the rows by time, or export the log again");
}

Problem times_far_apart(const std::string& path, std::size_t line) {
  return bad_input(path, line, "the times of the rows lie centuries apart", "look for damaged time stamps");
}

Problem overlap_that_differs(const std::string& path, std::size_t line, std::size_t earlier_line) {
  return bad_input(
      path, line,
      fmt::format("this row has the time of line {} and other readings, while the rows around it "
                  "repeat earlier rows: exports that overlap and differ",
                  earlier_line),
      "remove from the file what one of the two exports says of that time");
}

Problem date_not_needed(const Job& job, TimeKind kind) {
  if (has_date(kind))
    return bad_input(job.file, job.reading.date_line, "`date` is given, but the log has dates",
                     "leave it out");
  return bad_input(job.file, job.reading.date_line, "`date` is given, but the log has elapsed time",
                   "give `start`, the date and time of elapsed time 0");
}

Problem start_not_needed(const Job& job, TimeKind kind) {
  if (has_date(kind))
    return bad_input(job.file, job.reading.start_line, "`start` is given, but the log has dates",
                     "leave it out");
  return bad_input(job.file, job.reading.start_line, "`start` is given, but the log has a time of day",
                   "give `date`, the date of the first row");
}

Problem no_step_of_an_hour(const Job& job, LocalTime moment, const std::string& path,
                           std::optional<std::size_t> other_line) {
  std::string what =
      fmt::format("clock_forward names {}, but {} has no step of an hour there", moment.iso(), path);
  if (other_line) what.append(fmt::format("; it has one at line {}", *other_line));
  return bad_input(job.file, job.reading.clock_forward_line, std::move(what),
                   "correct or leave out clock_forward");
}

Problem time_never_shown(const JobLine& at) {
  return in_job(at, "the recorder never showed this time", "give seconds from the log's first sample");
}

Problem ends_before_it_begins(const JobLine& at) {
  return in_job(at, "it ends before it begins",
                at.clock == RecorderClock::Kind::time_of_day
                    ? "exchange from and to, or write \"+1 d\" before a time after midnight"
                    : "exchange from and to");
}

Problem date_without_dates(const JobLine& at) {
  return in_job(
      at, "a date and time is given, but the log has no dates",
      at.clock == RecorderClock::Kind::time_of_day
          ? "write the time of day as the log prints it, or give the `date` of its first row in [import]"
          : "write elapsed time as \"h:mm:ss\", or give the `start` of elapsed time 0 in [import]");
}

Problem time_without_date(const JobLine& at, const std::string& example) {
  return in_job(at, "a time without a date is given, but the log has dates",
                fmt::format("write both: \"{}\"", example));
}

Problem elapsed_without_seconds(const JobLine& at) {
  return in_job(at, "an elapsed time is given without its seconds", "write \"h:mm:ss\"");
}

Problem exclusion_outside_record(const JobLine& at, const std::string& column, const RecordEnds& record) {
  return outside_record(at, fmt::format("the exclusion of {}", column), record);
}

Problem remark_outside_record(const JobLine& at, const RecordEnds& record) {
  return outside_record(at, "the remark", record);
}

Problem time_range_outside_record(const JobLine& at, const RecordEnds& record) {
  return outside_record(at, "[time_range]", record);
}

Problem time_range_too_short(const JobLine& at, const std::string& path) {
  return in_job(at, fmt::format("fewer than two rows of {} lie in [time_range]", path),
                "correct from and to");
}

Problem confirmed_column_not_evaluated(const JobLine& at, const std::string& column) {
  return in_job(at, fmt::format("[[confirm]] names column \"{}\", which is not evaluated", column),
                "remove it, or give the column a role in [[thermocouple]]");
}

}  // namespace soakwright
