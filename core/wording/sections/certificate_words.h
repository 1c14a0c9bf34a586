// SPDX-License-Identifier: GPL-3.0-or-later
// The words of a certificate's first page.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/procedure/procedure.h"
#include "core/wording/labelled_text.h"
#include "core/wording/printed_numbers.h"

namespace soakwright::certificate_words {

/// "Holding temperature"
std::string holding_temperature();
/// Between thermocouples; short enough for one line with its stage.
std::string spread();
/// "590.2 to 612.1 °C"; "no hold was found" where nothing was measured.
std::string lowest_to_highest(const std::optional<double>& low_c, const std::optional<double>& high_c,
                              const PrintedNumbers& say);
/// "Highest temperature", of a procedure that limits none.
std::string highest_temperature();
std::string not_specified();
/// "Other requirements", "5 of 5 met".
LabelledText other_requirements(std::size_t met, std::size_t all);
/// "12 of 14 requirements met, 1 not met, 1 inconclusive."
std::string counted(std::size_t met, std::size_t not_met, std::size_t inconclusive);
/// "HTP-021, revision C, Stress relief of 38 mm seams"
std::string procedure_line(const Procedure& procedure);
/// "Recorded", "2031-04-02 06:00:00 to 19:12:00: 13 h 12 min, 1,585 readings at 30 s"
LabelledText recorded(const std::string& span, const std::string& duration, const std::string& readings,
                      const std::string& interval);
/// "Calibration", "none given in the job".
LabelledText no_calibration();
/// "TC1, 13:10 to 14:00: junction came off the work"
std::string exclusion_line(const std::string& channel, const std::string& when, const std::string& reason);
/// "and 3 more, in the record"
std::string more_in_record(std::size_t count);
/// "Stage 1, heat: overall"
std::string overall_column(const std::string& stage);
/// "Stage 1, heat: steepest over 15 min"
std::string steepest_column(const std::string& stage, const std::string& window);
/// "The same for TC2, TC3 and TC4."
std::string same_for(const std::vector<std::string>& channels);
/// "TC9 (edge)"
std::string at_edge(const std::string& channel);
/// A limit's place in an uncertainty budget: "stage-2 low" is "stage 2, low", `temperature_max` "maximum
/// temperature".
std::string budget_point(const std::string& what);
/// "TC9 to TC180 (columns 10 to 181)"
std::string run_of_columns(const std::string& first, const std::string& last, std::size_t first_column,
                           std::size_t last_column);

}  // namespace soakwright::certificate_words
