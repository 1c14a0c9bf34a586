// SPDX-License-Identifier: GPL-3.0-or-later
// What was measured for a requirement.
#pragma once

#include <string_view>

#include "core/units/sentence.h"

namespace soakwright {

/// Empty for a sentence of another section.
constexpr std::string_view requirement_pattern(Sentence sentence) {
  switch (sentence) {
    case Sentence::highest_reading:
      return "{0} reached {1} at {2}; limit {3}[; {4} too hot].";
    case Sentence::first_reading:
      return "{0} read {1} at the start of the record (loading), at {2}; limit {3}[; {4} too hot].";
    case Sentence::last_reading:
      return "{0} read {1} at the end of the record (unloading), at {2}; limit {3}[; {4} too hot].";
    case Sentence::longest_gap:
      return "The longest gap between readings is {0}, from {1}; limit {2}[; {3} too long].";
    case Sentence::sampling_interval:
      return "The sampling interval is {0}; limit {1}[; {2} too long].";
    case Sentence::fewest_thermocouples:
      return "The smallest number of thermocouples with valid readings at one time is {0}, from {1}; the "
             "procedure requires {2}[; {3} too few].";
    case Sentence::expired_certificates:
      return "Calibration certificates that had expired on the last day of the record: {0}.";
    case Sentence::steepest_heating:
      return "{0} heated at {1} over {2} at {3}; limit {4}[; {5} too fast].";
    case Sentence::steepest_cooling:
      return "{0} cooled at {1} over {2} at {3}; limit {4}[; {5} too fast].";
    case Sentence::slowest_heating:
      return "{0} heated at {1} over the whole ramp; the procedure requires {2}[; {3} too slow].";
    case Sentence::slowest_cooling:
      return "{0} cooled at {1} over the whole ramp; the procedure requires {2}[; {3} too slow].";
    case Sentence::widest_spread:
      return "{0} was {2} hotter than {1} at {3}; limit {4}[; {5} too wide].";
    case Sentence::hold_time_continuous:
      return "All thermocouples were in the holding temperature range ({0}) for {1}, from {2}; the procedure "
             "requires {3}[; {4} too short].";
    case Sentence::hold_time_accumulated:
      return "All thermocouples were in the holding temperature range ({0}) for {1} in total, the longest "
             "time from {2}; the procedure requires {3}[; {4} too short].";
    case Sentence::hold_time_over_records:
      return "All thermocouples were in the holding temperature range ({0}) for {1} in total over "
             "{2:record|records}; the procedure requires {3}[; {4} too short].";
    case Sentence::never_in_range_together:
      return "No hold was found: the thermocouples were never all in the holding temperature range ({0}) "
             "together; the procedure requires {1}.";
    case Sentence::longest_time_at_temperature:
      return "{0} was at or above {1} for {2}; limit {3}[; {4} too long].";
    case Sentence::time_out_of_range:
      return "Thermocouples were out of the holding temperature range ({0}) for {1} within the hold period; "
             "limit {2}[; {3} too long].";
    case Sentence::lowest_at_edge:
      return "{0}, at the edge of the heated band, read {1} at {2}: {3} of the low limit of the hold; the "
             "procedure requires {4}[; {5} too low].";
    case Sentence::lowest_tempering:
      return "The lowest tempering parameter over the whole record is {1}, of {0}; the procedure requires "
             "{2}[; {3} too low].";
    case Sentence::highest_tempering:
      return "The highest tempering parameter over the whole record is {1}, of {0}; limit {2}[; {3} too "
             "high].";
    case Sentence::time_out_of_preheat:
      return "Thermocouples were out of the preheat range ({0}) for {1} during {2}; none is allowed.";
    case Sentence::standard_error:
      return "Standard error: {0}.";
    case Sentence::uncertainty:
      return "Expanded uncertainty U (k = 2): {0}.";
    default:
      return {};
  }
}

}  // namespace soakwright
