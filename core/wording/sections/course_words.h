// SPDX-License-Identifier: GPL-3.0-or-later
// What happened in the course of a record, in words for the report's lists.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/evaluate/verdict.h"
#include "core/wording/labelled_text.h"
#include "core/wording/printed_numbers.h"

namespace soakwright::course_words {

/// "TC3 took over from here to the end of the record; at that moment TC3 less TC1 was −1.2 °C."
std::string took_over(const Replacement& replacement, const PrintedNumbers& say);

// Of one hold.
/// "Continuous hold", or that there was none.
LabelledText continuous_hold(const std::optional<TimeSpan>& hold, const PrintedNumbers& say);
LabelledText hold_period(double from_s, double to_s, const PrintedNumbers& say);
LabelledText times_in_range(const std::vector<TimeSpan>& times, const PrintedNumbers& say);
LabelledText edges_crossed(const std::vector<TimeSpan>& times, const PrintedNumbers& say);

}  // namespace soakwright::course_words
