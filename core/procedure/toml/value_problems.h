// SPDX-License-Identifier: GPL-3.0-or-later
// What can be wrong with a single value of a TOML file, in words. Each names the key and what is written
// there.
#pragma once

#include <string>
#include <vector>

#include "core/problems/problem_words.h"
#include "core/procedure/toml/table_reader.h"

namespace soakwright::value_problems {

ProblemWords not_a_text(const FoundValue& found);
ProblemWords empty_name(const FoundValue& found);
ProblemWords unknown_word(const FoundValue& found, const std::vector<std::string>& known);
/// A unit in another way of writing than `word`.
ProblemWords other_word_for_unit(const FoundValue& found, const std::string& word);
ProblemWords control_character_in_path(const FoundValue& found);

ProblemWords not_a_number(const FoundValue& found);
ProblemWords not_finite(const FoundValue& found);
ProblemWords not_a_count(const FoundValue& found);
ProblemWords negative(const FoundValue& found);
ProblemWords not_above_0(const FoundValue& found);
/// A column's number below 1.
ProblemWords column_before_first(const FoundValue& found);

ProblemWords not_a_duration(const FoundValue& found);
ProblemWords not_a_thickness(const FoundValue& found);
ProblemWords not_a_length(const FoundValue& found);
ProblemWords not_an_angle(const FoundValue& found);
ProblemWords angle_without_unit(const FoundValue& found, double plain);
ProblemWords not_plus_minus(const FoundValue& found);
ProblemWords not_a_resolution(const FoundValue& found);
/// Colder than absolute zero, or hotter than any thermocouple reads.
ProblemWords no_such_temperature(const FoundValue& found);

ProblemWords not_a_date(const FoundValue& found);
ProblemWords not_a_local_time(const FoundValue& found);
ProblemWords not_a_moment(const FoundValue& found);

// Of limits that depend on the thickness.
ProblemWords not_a_time_per_thickness(const FoundValue& found);
ProblemWords not_points_of_thickness(const FoundValue& found);
ProblemWords point_not_thicker(const FoundValue& found);

}  // namespace soakwright::value_problems
