// SPDX-License-Identifier: GPL-3.0-or-later
// What is said beside the figures of a requirement, and in findings.
#pragma once

#include <string_view>

#include "core/units/sentence.h"

namespace soakwright {

/// Empty for a sentence of another section.
constexpr std::string_view finding_pattern(Sentence sentence) {
  switch (sentence) {
    case Sentence::no_reading:
      return "There is no reading.";
    case Sentence::no_first_reading:
      return "There is no reading at the start of the record.";
    case Sentence::no_last_reading:
      return "There is no reading at the end of the record.";
    case Sentence::one_row:
      return "The record has fewer than two readings.";
    case Sentence::no_dates:
      return "The log has no dates to compare the certificates with.";
    case Sentence::no_hold:
      return "No hold was found.";
    case Sentence::no_hold_beside_hotter:
      return "No hold was found, so its readings cannot be told apart from those of the hotter hold beside "
             "it.";
    case Sentence::no_edge_reading:
      return "No thermocouple at the edge of the heated band has a reading within the hold.";
    case Sentence::no_thermocouple:
      return "No thermocouple is evaluated.";
    case Sentence::no_such_period:
      return "The job names no period \"{0}\".";
    case Sentence::nobody_through_the_holds:
      return "No thermocouple came into the range of the first hold and later left that of the last.";
    case Sentence::enough_if_confirmed:
      return "Some readings of that time are suspect and count as no measurement; if a person confirms them, "
             "the smallest number is {0}.";
    case Sentence::excursions_without_hold:
      return "No hold was found, so there is no hold period in which to look for excursions.";
    case Sentence::spread_not_measured:
      return "No spread could be measured: at no reading of the stage do two thermocouples have a "
             "temperature.";
    case Sentence::spread_without_hold:
      return "No hold was found, so there is no hold period in which to measure the spread.";
    case Sentence::spread_unseen_in_hold:
      return "A thermocouple without readings in the hold period may have been further off: see the "
             "findings.";
    case Sentence::spread_of_one:
      return "`{0}` is not evaluated, because only {1:thermocouple is|thermocouples are} evaluated.";
    case Sentence::spread_out_of_reach:
      return "`{0}` is not evaluated, because no two evaluated thermocouples are within {1} m of each other.";
    case Sentence::hotter_unseen:
      return "Thermocouples without readings, not known to be cold there, may have been hotter: see the "
             "findings.";
    case Sentence::channels_without_reading_there:
      return "{0:thermocouple has|thermocouples have} no reading there.";
    case Sentence::edge_unseen:
      return "For part of the hold there are no readings at the edge of the heated band.";
    case Sentence::longer_unseen:
      return "Missing readings could make it longer.";
    case Sentence::tempering_unseen:
      return "Time without readings could have added to it.";
    case Sentence::tempering_over_records:
      return "All records of the weld are counted together, each as a whole.";
    case Sentence::tempering_alone:
      return "This record alone gives {0}.";
    case Sentence::above_qualified:
      return "{0} has a tempering parameter of {1}, above the {2} for which the material was qualified "
             "({3}).";
    case Sentence::all_records_together:
      return "All records of the hold are counted together.";
    case Sentence::equivalent_time:
      return "That is equivalent to {0} h at {1}, with C = {2}.";
    case Sentence::times_in_range:
      return "Times in range: {0}.";
    case Sentence::range_narrowed:
      return "The range is narrowed by U at each end.";
    case Sentence::excursions_counted:
      return "{0:excursion allowed is|excursions allowed are} counted in, {1} in total.";
    case Sentence::no_excursion_counted:
      return "No excursion is counted in.";
    case Sentence::excursions_over_a_tenth:
      return "The excursions counted in are more than a tenth of the hold time; without them it is {0}.";
    case Sentence::possible_with_missing:
      return "With the time for which readings are missing it could be {0}.";
    case Sentence::possible_with_u:
      return "With the range widened by U it could be {0}.";
    case Sentence::hold_open:
      return "The record starts or ends within the hold, so the hold may have been longer.";
    case Sentence::hold_open_in_one_record:
      return "One of the records starts or ends within the hold, so the hold may have been longer.";
    case Sentence::between_with_u:
      return "With U at the ends of the range it is between {0} and {1}.";
    case Sentence::at_least_with_u:
      return "With U at the ends of the range it is at least {0}.";
    case Sentence::no_hold_certain_with_u:
      return "With the range narrowed by U no hold is certain.";
    case Sentence::missing_in_hold:
      return "For {0} within the hold period readings are missing.";
    case Sentence::missing_in_period:
      return "For {0} of the period there are no readings.";
    case Sentence::nearest_to_limit_with_u:
      return "This is the spread nearest to the limit after U.";
    case Sentence::widest_as_measured:
      return "The widest as measured: {0} was {2} hotter than {1} at {3}.";
    case Sentence::uncertainty_not_known:
      return "The uncertainty U is not known at that temperature.";
    case Sentence::dated_certificates:
      return "Certificates with a date in the job: {0}.";
    case Sentence::above_limit:
      return "{0} was above {1}, up to {2}.";
    case Sentence::tolerance_not_known:
      return "{0} read {1}; its tolerance at that temperature is not known.";
    case Sentence::may_be_above:
      return "{0} read up to {1}; with U = {2} it may have been above {3}.";
    case Sentence::no_readings_from:
      return "No readings from {0} from {1}.";
    case Sentence::no_readings_for:
      return "No readings for {0}.";
    case Sentence::channel_without_reading:
      return "{0} has no reading there.";
    case Sentence::channel_without_first:
      return "{0} has no reading within {1} of the start of the record.";
    case Sentence::channel_without_last:
      return "{0} has no reading within {1} of the end of the record.";
    case Sentence::certificate_of_channel:
      return "The calibration certificate of {0} expired on {1}.";
    case Sentence::certificate_of_recorder:
      return "The calibration certificate of the recorder expired on {0}.";
    case Sentence::never_hot_enough:
      return "{0} never came into the holding temperature range ({1}); its highest reading was {2} at {3}.";
    case Sentence::never_cool_enough:
      return "{0} never came into the holding temperature range ({1}); its lowest reading was {2} at {3}.";
    case Sentence::out_of_range:
      return "{0} was out of the holding temperature range ({1}) for {2}; worst reading {3}.";
    case Sentence::out_of_range_once:
      return "{0} was out of the holding temperature range ({1}) at a single reading, {2}.";
    case Sentence::out_in_period:
      return "{0} read {1} during {2}.";
    case Sentence::excursion_is_allowed:
      return "The excursion is allowed.";
    case Sentence::hotter_than:
      return "{0} was up to {2} hotter than {1}.";
    case Sentence::within_uncertainty:
      return "That is within U = {0} of the limit.";
    case Sentence::took_over:
      return "{0} took over from {1} at {2}; the difference, {0} less {1}, was {3}.";
    case Sentence::took_over_unseen:
      return "{0} took over from {1} at {2}; how far apart the two read is not known.";
    case Sentence::previous_part_not_met:
      return "An earlier part of cycle {0} on its own is not met ({1}). This verdict is for the last part; "
             "earlier parts count only toward an accumulated hold time and the tempering.";
    case Sentence::previous_part_inconclusive:
      return "An earlier part of cycle {0} on its own is inconclusive ({1}). This verdict is for the last "
             "part; earlier parts count only toward an accumulated hold time and the tempering.";
    case Sentence::previous_cycle_not_met:
      return "Cycle {0} on its own is not met ({1}). This verdict is for cycle {2}; earlier cycles count "
             "only toward an accumulated hold time and the tempering.";
    case Sentence::previous_cycle_inconclusive:
      return "Cycle {0} on its own is inconclusive ({1}). This verdict is for cycle {2}; earlier cycles "
             "count only toward an accumulated hold time and the tempering.";
    case Sentence::record_starts_above:
      return "The record starts with {0} at {1}, already at or above {2}; what happened before is not "
             "recorded.";
    case Sentence::record_ends_above:
      return "The record ends with {0} at {1}, still at or above {2}; what happened after is not recorded.";
    default:
      return {};
  }
}

}  // namespace soakwright
