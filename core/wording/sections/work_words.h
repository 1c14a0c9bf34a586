// SPDX-License-Identifier: GPL-3.0-or-later
// The words for what was heated, with what, and for the weld's previous records.
#pragma once

#include <string>

#include "core/evaluate/analysis.h"
#include "core/procedure/job/job.h"
#include "core/wording/labelled_text.h"
#include "core/wording/printed_numbers.h"

namespace soakwright::work_words {

/// The label of the report's number.
const char* report_number();
/// "Cycle", "2 of this weld".
LabelledText cycle(int number);
/// "Cycle 1, earlier": which log, when, how its holds went, and what it comes to by itself.
LabelledText previous_record(const PreviousRecord& one, TemperatureUnit unit);
/// "Log of cycle 1"
std::string log_of_cycle(int number);
/// "accuracy ±1.0 °C, certificate 17-204, valid until 2032-01-01"; empty where the job says nothing.
std::string recorder(const RecorderEntry& recorder, const PrintedNumbers& say);

}  // namespace soakwright::work_words
