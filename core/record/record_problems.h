// SPDX-License-Identifier: GPL-3.0-or-later
// The words in which a log, or what a job says of its columns, is refused.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/procedure/job/job.h"
#include "core/read/log_table.h"
#include "core/record/record.h"

namespace soakwright {

/// A record needs two rows.
Problem too_few_rows(const std::string& path, const LogTable& table);

// Columns as the job names them; `line` is that of the job.
Problem no_such_column(const Job& job, std::size_t line, const std::string& said, const LogTable& table);
/// `numbers` of the columns that have the name.
Problem several_such_columns(const Job& job, std::size_t line, const std::string& said,
                             const std::vector<std::size_t>& numbers);
Problem column_listed_twice(const Job& job, const ThermocoupleEntry& entry);
Problem column_is_no_thermocouple(const Job& job, std::size_t line, const std::string& said);
Problem spare_for_itself(const Job& job, const ThermocoupleEntry& entry);
/// The name that `entry` gives is that of column `number` too.
Problem name_of_another_column(const Job& job, const ThermocoupleEntry& entry, std::size_t number);

// Units.
/// `ending` ends in a letter that may be its unit, `another` does not.
Problem unit_in_some_names_only(const std::string& path, std::size_t line, const LogColumn& ending,
                                const LogColumn& another);
Problem unit_for_no_column(const Job& job);

// No temperature at all.
Problem emf_without_cold_junction(const std::string& path, std::size_t line);
Problem no_temperatures(const std::string& path, std::size_t line, const std::vector<OtherColumn>& columns);

}  // namespace soakwright
