// SPDX-License-Identifier: GPL-3.0-or-later
// The words on the chart.
#pragma once

#include <string>

#include "core/phases/phase.h"
#include "core/procedure/job/job.h"
#include "core/record/record.h"
#include "core/wording/printed_numbers.h"

namespace soakwright::chart_words {

/// "TC3 (spare for TC1)", "TC9 (edge)".
std::string legend(const Channel& channel, const Record& record);
/// "hold 605 °C", "heat 120.0 °C/h".
std::string phase(const Phase& phase, const PrintedNumbers& say);
/// Work, weld and cycle as far as the job names them; else the log's file.
std::string title(const Job* job, const Record& record);
std::string time_axis(RecorderClock::Kind kind);
std::string temperature_axis(const PrintedNumbers& say);
/// "TC3 for TC1"
std::string takeover(const std::string& by, const std::string& channel);
std::string first_deviation();

// Levels that something was held against; `limit` is a temperature in words.
std::string maximum(const std::string& limit);
std::string start_at_most(const std::string& limit);
std::string end_at_most(const std::string& limit);
std::string rates_above(const std::string& limit);
std::string rates_below(const std::string& limit);

}  // namespace soakwright::chart_words
