// SPDX-License-Identifier: GPL-3.0-or-later
// File warnings about rows and their times.
#pragma once

#include <string_view>

#include "core/units/sentence.h"

namespace soakwright {

/// Empty for a sentence of another section.
constexpr std::string_view row_notice_pattern(Sentence sentence) {
  switch (sentence) {
    case Sentence::rows_repeated:
      return "Rows that repeat the row before to the letter are dropped.";
    case Sentence::header_repeated:
      return "The header is repeated among the rows; these lines are left out.";
    case Sentence::rows_short:
      return "Rows with fewer cells than the others; what is not there is missing. A last cell that the "
             "file's end cuts is not read.";
    case Sentence::rows_long:
      return "Rows with more cells than there are columns: which cell belongs to which column is not known. "
             "All readings of these rows are missing.";
    case Sentence::lines_without_time:
      return "Lines without a readable time are left out, the first: '{0}'.";
    case Sentence::hours_and_minutes_assumed:
      return "The times have two parts; hours and minutes are assumed.";
    case Sentence::seconds_assumed:
      return "The log names no unit for the time; seconds are assumed.";
    case Sentence::date_order_against_pace:
      return "The date order {0} was given and is followed, but time runs on evenly only with {1}.";
    case Sentence::rows_of_overlap:
      return "{0:row repeats|rows repeat} earlier rows to the letter (exports that overlap); dropped.";
    case Sentence::rows_in_wrong_order:
      return "{0:row is|rows are} out of time order in the file; the program sorts them.";
    case Sentence::midnight_passed:
      return "The time of day starts again at midnight; the rows after it belong to the next day.";
    case Sentence::midnights_passed:
      return "The time of day starts again at midnight {0:time|times}; the rows after it belong to the next "
             "day.";
    case Sentence::rows_of_one_time:
      return "{0:row has|rows have} the time of the row before; rows of one time are spread evenly up to the "
             "next.";
    case Sentence::clock_put_back:
      return "The clock was put back by an hour here; time runs on, and moments are printed as the clock "
             "showed them.";
    case Sentence::time_runs_back:
      return "Time runs backward here by {0}; the step is taken as one usual interval, and what is evaluated "
             "across it is unknown there. Moments are printed as the clock showed them.";
    case Sentence::time_runs_back_often:
      return "Time runs backward here by {0}, and {1:more time|more times}; the step is taken as one usual "
             "interval, and what is evaluated across it is unknown there. Moments are printed as the clock "
             "showed them.";
    case Sentence::clock_put_forward:
      return "The clock was put forward by an hour here, as the job says; no time is missing, and moments "
             "are printed as the clock showed them.";
    case Sentence::leap_stays_a_gap:
      return "Time leaps forward by an hour here: a gap, or a clock put forward. It stays a gap unless "
             "clock_forward in [import] of the job names it.";
    case Sentence::gap_of_rows:
      return "One step between rows is longer than three intervals; the longest is {0}.";
    case Sentence::gaps_of_rows:
      return "{0:step|steps} between rows are longer than three intervals; the longest is {1}.";
    default:
      return {};
  }
}

}  // namespace soakwright
