// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/previous_record_problems.h"

#include <fmt/format.h>

#include "core/problems/bad_input.h"

namespace soakwright::previous_record_problems {
namespace {

std::string without_place_in_time(const std::string& log) {
  return fmt::format("{} has no date, so that its place in time is not known", log);
}

}  // namespace

Problem other_number_of_files(const std::string& job, std::size_t named, std::size_t given) {
  return bad_input(job, 0,
                   fmt::format("the job names {} previous records, and files of {} are given", named, given),
                   "give the files of each");
}

Problem job_with_previous_records(const std::string& job_of_previous) {
  return bad_input(job_of_previous, 0, "a previous record's job names previous records itself",
                   "name all of them, in order, in the job of the last one");
}

Problem job_of_other_weld(const std::string& job_of_previous, const std::optional<std::string>& weld,
                          const std::optional<std::string>& named_by) {
  return bad_input(job_of_previous, 0,
                   fmt::format("this job is for weld {}, and the one that names it for {}",
                               weld.value_or("(none)"), named_by.value_or("(none)")),
                   "give both the same `weld`, or take the previous record out of the job");
}

Problem job_without_weld(const std::string& job_of_previous, const std::string& weld) {
  return bad_input(
      job_of_previous, 0,
      fmt::format("weld {} is not in it, and is in the job that names it as a previous record's", weld),
      "list the weld in both, or evaluate it in a job of its own");
}

Problem same_readings(const NamedAt& at, const std::string& log, const std::string& other_log) {
  return bad_input(at.job, at.line, fmt::format("{} has the same readings as {}", log, other_log),
                   "name each record once: its hold would be counted twice");
}

Problem without_date(const NamedAt& at, const std::string& log) {
  return bad_input(at.job, at.line, without_place_in_time(log),
                   "give the date of its first row, `date = 2031-04-02`, in [import] of its job");
}

Problem without_start(const NamedAt& at, const std::string& log) {
  return bad_input(
      at.job, at.line, without_place_in_time(log),
      "give the moment of its elapsed time 0, `start = 2031-04-02T06:00:00`, in [import] of its job");
}

Problem not_over(const NamedAt& at, const LogAndMoment& last_row, const LogAndMoment& first_row_of_next) {
  return bad_input(
      at.job, at.line,
      fmt::format("{} is not over before {} begins: its last row is at {}, the first of the other at {}",
                  last_row.log, first_row_of_next.log, last_row.moment, first_row_of_next.moment),
      "list the records in the order in which they were run; time that both show would be counted twice");
}

}  // namespace soakwright::previous_record_problems
