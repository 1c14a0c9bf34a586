// SPDX-License-Identifier: GPL-3.0-or-later
// File warnings about what the job says of the log.
#pragma once

#include <string_view>

#include "core/units/sentence.h"

namespace soakwright {

/// Empty for a sentence of another section.
constexpr std::string_view job_notice_pattern(Sentence sentence) {
  switch (sentence) {
    case Sentence::moment_shown_twice:
      return "The job, line {0}: the recorder showed {1} {2:time|times}. The one {3} after the first sample "
             "is meant; to name another, give seconds from the log's first sample.";
    case Sentence::exclusion_beyond_record:
      return "The job, line {0}: the exclusion of {1} reaches beyond the record; it counts from {2} to {3}.";
    case Sentence::time_range_beyond_record:
      return "The job, line {0}: [time_range] reaches beyond the record; it counts from {1} to {2}.";
    case Sentence::period_outside_record:
      return "The job, line {0}: the period \"{1}\" lies outside the record, which runs from {2} to {3}.";
    case Sentence::period_beyond_record:
      return "The job, line {0}: the period \"{1}\" reaches beyond the record, which runs from {2} to {3}.";
    case Sentence::confirmed_without_suspect:
      return "The job confirms that {0} is not {1}, but no such suspicion was found.";
    default:
      return {};
  }
}

}  // namespace soakwright
