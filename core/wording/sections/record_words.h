// SPDX-License-Identifier: GPL-3.0-or-later
// The words for a log as it was read: its extent, its columns, the reader's settings.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/evaluate/verdict.h"
#include "core/record/record.h"
#include "core/wording/labelled_text.h"
#include "core/wording/printed_numbers.h"

namespace soakwright::record_words {

// Of a channel.
/// "°C", "mV".
std::string unit(ChannelUnit unit);
/// "monitor, edge", "spare for TC1".
std::string role(const Channel& channel, const Record& record);
/// What the job says of the thermocouple itself: "type K, class 1, certificate 17-204".
std::string instrument(const ThermocoupleEntry& entry, const PrintedNumbers& say);
/// Why a channel is not among the evaluated ones.
std::string why_not_evaluated(const Channel& channel, const Record& record);

// Of the columns.
/// "4, all evaluated"; "3 of 5 evaluated: TC1, TC2 and TC3". `all`: no column of the log is left out.
LabelledText thermocouples(const Record& record, bool all);
LabelledText columns_not_evaluated(const std::string& list);
/// " and 12 more"
std::string and_more(std::size_t count);
/// "column 8, Set point: set point"
std::string other_column(const OtherColumn& column);

// Of the whole record.
LabelledText log(const std::string& file);
/// First and last reading, duration, number of readings.
std::vector<LabelledText> extent(const Record& record, const PrintedNumbers& say);
LabelledText time_range(const std::string& span);
/// "TC1 17.967 (6.00 h at 590 °C), TC2 17.951 (5.78 h)"; no text where no hold names a temperature.
LabelledText tempering(const Verdicts& verdicts, const PrintedNumbers& say);

/// How the file was read, each setting with who chose it.
std::vector<LabelledText> reading(const Reading& reading);

}  // namespace soakwright::record_words
