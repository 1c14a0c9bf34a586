// SPDX-License-Identifier: GPL-3.0-or-later
// What can be wrong with a job's composition, preheat and bands, in words.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/problems/problem_words.h"
#include "core/procedure/job/job.h"

namespace soakwright::preheat_problems {

ProblemWords too_much_of_an_element(const std::string& element, double percent, double most);
ProblemWords over_a_whole(double sum);
ProblemWords empty_composition();
ProblemWords needs_soak_band(const std::string& key);
ProblemWords wall_fills_the_pipe();
ProblemWords used_by_no_weld(const std::string& key);
ProblemWords band_of_which_weld();
ProblemWords band_of_no_weld(const std::string& weld, const std::vector<std::string>& known);
ProblemWords two_bands(std::size_t line_of_first);

Problem band_without_wall(const Job& job, const BandEntry& band);
Problem band_wall_fills_the_pipe(const Job& job, const BandEntry& band);
Problem preheat_without_thickness(const Job& job, std::size_t line, const std::string& weld);
Problem preheat_too_thin(const Job& job, std::size_t line, const std::string& weld, Thickness thickness);

}  // namespace soakwright::preheat_problems
