// SPDX-License-Identifier: GPL-3.0-or-later
// What a person took out of the evaluation, in words: a thermocouple that the job does not use, and readings
// that it excludes.
//
// A verdict can turn from not met to met by it, so each is named with its reason beside the verdict.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/wording/wording_context.h"

namespace soakwright {

struct ExcludedText {
  std::size_t channel = 0;  ///< index into Record::channels
  std::string name;
  std::string when;    ///< "2031-04-02 13:10:05 to 13:25:05", or that it is the whole record
  std::string reason;  ///< as the job gives it, or that it gives none
  bool whole = false;  ///< nothing of the record is evaluated
};

/// In the log's order. A column that the job does not list is not named here, also where the job says that
/// such columns are not used.
std::vector<ExcludedText> excluded_texts(const WordingContext& context);
/// " Excluded by a person: TC1, 13:10 to 14:00 (junction came off the work)." Empty if nothing is excluded.
std::string excluded_sentence(const WordingContext& context);
/// What the legend adds to the channel's name; empty if nothing of it is excluded.
std::string excluded_legend(const Record& record, const Job* job, std::size_t channel);
/// Nothing of the channel is evaluated because a person took it out.
bool is_taken_out(const Record& record, const Job* job, std::size_t channel);

}  // namespace soakwright
