// SPDX-License-Identifier: GPL-3.0-or-later
// What can be wrong with previous records, their jobs and the files given for them, in words.
#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "core/problems/problem.h"

namespace soakwright::previous_record_problems {

/// The job names `named` previous records, and files of `given` are there.
Problem other_number_of_files(const std::string& job, std::size_t named, std::size_t given);

// The job of a previous record.
Problem job_with_previous_records(const std::string& job_of_previous);
/// `named_by`: the weld of the job that names this one. Nullopt: none.
Problem job_of_other_weld(const std::string& job_of_previous, const std::optional<std::string>& weld,
                          const std::optional<std::string>& named_by);
Problem job_without_weld(const std::string& job_of_previous, const std::string& weld);

/// A previous record in the job that names it.
struct NamedAt {
  std::string job;
  std::size_t line = 0;
};
Problem same_readings(const NamedAt& at, const std::string& log, const std::string& other_log);
/// `log` has only times of day.
Problem without_date(const NamedAt& at, const std::string& log);
/// `log` has only elapsed times.
Problem without_start(const NamedAt& at, const std::string& log);

/// A log, and the moment of its first or last row as its recorder prints it.
struct LogAndMoment {
  std::string log, moment;
};
Problem not_over(const NamedAt& at, const LogAndMoment& last_row, const LogAndMoment& first_row_of_next);

}  // namespace soakwright::previous_record_problems
