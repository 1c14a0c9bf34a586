// SPDX-License-Identifier: GPL-3.0-or-later
// What can be wrong with a job, in words: with single values, and between its entries.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/problems/problem_words.h"
#include "core/procedure/toml/table_reader.h"

namespace soakwright::job_problems {

// Values.
ProblemWords not_a_tolerance(const FoundValue& found);
ProblemWords not_a_cold_junction(const FoundValue& found);
ProblemWords not_a_correction(const FoundValue& found);
ProblemWords correction_not_rising(const FoundValue& point);
ProblemWords not_details(const FoundValue& found);
/// A job has no `thickness` of its own.
ProblemWords thickness_of_job();
/// `to` before `from`; `of_day`: they are written as times of day.
ProblemWords to_not_after_from(bool of_day);
/// `weld` and [[weld]]. `problem` is the parser's.
Problem weld_written_twice(Problem problem);

// Entries that are there twice: what is named, and the line of the first.
ProblemWords same_column(const std::string& column, std::size_t line_of_first);
ProblemWords same_thermocouple_name(const std::string& name, std::size_t line_of_first);
ProblemWords same_weld(const std::string& number, std::size_t line_of_first);
ProblemWords same_period(const std::string& name, std::size_t line_of_first);
ProblemWords same_previous_log(const std::string& log, std::size_t line_of_first);

// Thermocouples.
ProblemWords weld_not_in_job(const std::string& weld, const std::vector<std::string>& known);
ProblemWords reason_of_evaluated();
ProblemWords unlisted_off_without_thermocouples();
ProblemWords spare_of_another_role(const std::string& spare_for);
ProblemWords spare_for_itself(const std::string& spare_for);
ProblemWords spare_for_spare(const std::string& spare_for);
ProblemWords spare_for_unevaluated(const std::string& spare_for);
ProblemWords second_spare(const std::string& spare_for, std::size_t line_of_first);

// Previous records.
/// The job's `cycle` leaves too few numbers for those before.
ProblemWords no_cycle_left(int cycle, std::size_t previous_records);
ProblemWords cycles_fall(int cycle, int next);

/// `key` in the job at `line` names the file that cannot be opened.
Problem named_in_job(Problem problem, const std::string& job, const std::string& key, std::size_t line);

}  // namespace soakwright::job_problems
