// SPDX-License-Identifier: GPL-3.0-or-later
// The words of every sentence, in English. `{0}` is the first argument, `{0:reading|readings}` a count with
// its noun.
//
// Another language is another such file: whole sentences, so that the arguments may come in any order.
#include "core/wording/statement_words.h"

namespace soakwright {

// No default: the compiler names the sentence that has no words.
std::string_view pattern_of(Sentence sentence) {
  switch (sentence) {
    case Sentence::none:
      return "";

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
      return "The smallest number of thermocouples with valid readings at one time is {0}, from {1}; "
             "the procedure requires {2}[; {3} too few].";
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
      return "{0}, at the edge of the heated band, read {1} at {2}: {3} of the low limit of the hold; "
             "the procedure requires {4}[; {5} too low].";
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

    case Sentence::no_heating_rate:
      return "No heating rate could be measured: nowhere within the stage are there {0} of readings without "
             "a break.";
    case Sentence::no_cooling_rate:
      return "No cooling rate could be measured: nowhere within the stage are there {0} of readings without "
             "a break.";
    case Sentence::rate_after_hold:
      return "This is after the hold.";
    case Sentence::rate_before_hold:
      return "This is before the hold.";
    case Sentence::rate_not_without_a_tenth:
      return "Without a tenth of its readings the rate is not certainly above the limit.";
    case Sentence::rate_within_noise_and_u:
      return "Noise and U = {0} leave open whether it is above the limit.";
    case Sentence::rate_within_noise:
      return "That is less than four standard errors above the limit, so noise alone could explain it.";
    case Sentence::rate_certain_window:
      return "The window at {0} is certainly above the limit: {1} over {2} (standard error {3}).";
    case Sentence::heated_up_to:
      return "{0} heated at up to {1} over {2} (standard error {3}).";
    case Sentence::cooled_up_to:
      return "{0} cooled at up to {1} over {2} (standard error {3}).";
    case Sentence::heated_over_ramp:
      return "{0} heated at {1} over the whole ramp ({2}); an overall rate above the limit proves a steeper "
             "one within it.";
    case Sentence::cooled_over_ramp:
      return "{0} cooled at {1} over the whole ramp ({2}); an overall rate above the limit proves a steeper "
             "one within it.";
    case Sentence::jumped_up:
      return "{0} rose by {1} in {2}; no window of {3} shows it, and the record cannot tell the work from "
             "the thermocouple.";
    case Sentence::jumped_down:
      return "{0} fell by {1} in {2}; no window of {3} shows it, and the record cannot tell the work from "
             "the thermocouple.";
    case Sentence::range_crossed_unseen:
      return "{0} passed through the whole temperature range of the stage in less than a window of {1}.";
    case Sentence::window_widened:
      return "The rate is measured over {0}, eight intervals of the log, because {1} is shorter.";
    case Sentence::no_overall_heating_rate:
      return "There is no overall heating rate: no thermocouple is recorded from one end of the ramp to the "
             "other.";
    case Sentence::no_overall_cooling_rate:
      return "There is no overall cooling rate: no thermocouple is recorded from one end of the ramp to the "
             "other.";
    case Sentence::channel_without_heating_rate:
      return "{0} has no overall heating rate: it is not recorded from one end of the ramp to the other.";
    case Sentence::channel_without_cooling_rate:
      return "{0} has no overall cooling rate: it is not recorded from one end of the ramp to the other.";
    case Sentence::stage_not_all_shown:
      return "The record does not show all of the stage: see the findings.";

    case Sentence::share_of_cycle:
      return "Cycle {0}: {1}.";
    case Sentence::share_of_part:
      return "Cycle {0}, part {1}: {2}.";

    case Sentence::suspect_thermocouple:
      return "{0} is suspect ({1}).";
    case Sentence::suspect_thermocouples:
      return "{0} are suspect ({1}).";
    case Sentence::suspect_evidence:  // already a sentence (suspect_sentence.cpp)
      return "{0}";
    case Sentence::suspect_still_evaluated:
      return "This is a warning only: it is still evaluated.";
    case Sentence::suspects_still_evaluated:
      return "This is a warning only: they are still evaluated.";
    case Sentence::suspect_confirmed:
      return "The job confirms the readings: {0}.";
    case Sentence::suspect_no_measurement:
      return "Such readings are no measurement: the time counts as without readings unless the job excludes "
             "or confirms it.";

    case Sentence::outside_soak_band:
      return "{0} is {1} from the centre of the weld, outside the soak band of {2}.";
    case Sentence::inside_heated_band_edge:
      return "{0}, at the edge of the heated band, is {1} from the centre of the weld; the edge is at least "
             "{2} "
             "from it, so {0} reads hotter than the edge (AWS D10.10, edition 2021, from memory, check "
             "against "
             "your edition).";
    case Sentence::beyond_heated_band:
      return "{0} is {1} from the centre of the weld, beyond the heated band of {2}.";
    case Sentence::no_position_on_band:
      return "The job gives no position for {0}, so it is not known whether {0} is on the bands.";
    case Sentence::heated_band_narrow:
      return "The heated band of {0} is narrower than {1}, the soak band and L = 2·√(R·t) on each side of it "
             "(AWS D10.10, edition 2021, from memory, check against your edition).";

    case Sentence::deviation_maximum_exceeded:
      return "{0} exceeded the limit.";
    case Sentence::deviation_spread_exceeded:
      return "The spread between {0} and the coldest thermocouple exceeded the limit.";
    case Sentence::deviation_preheat_left:
      return "{0} was out of the preheat range.";
    case Sentence::deviation_few_thermocouples:
      return "Fewer thermocouples than required had valid readings.";
    case Sentence::deviation_loaded_hot:
      return "{0} was above the limit at the first reading.";
    case Sentence::deviation_unloaded_hot:
      return "{0} was still above the limit at the last reading.";
    case Sentence::deviation_gap_long:
      return "The next reading was due by {0} and is missing.";
    case Sentence::deviation_interval_long:
      return "The sampling interval is {0} from the start of the record.";
    case Sentence::deviation_certificate_expired:
      return "A calibration certificate had expired on the last day of the record, whatever the readings "
             "are.";
    case Sentence::deviation_edge_cold:
      return "{0}, at the edge of the heated band, was below its required share of the low limit of the "
             "hold.";
    case Sentence::deviation_heated_fast:
      return "{0} heated faster than the limit over {1}.";
    case Sentence::deviation_cooled_fast:
      return "{0} cooled faster than the limit over {1}.";
    case Sentence::deviation_ramp_slow:
      return "{0} had not finished the ramp within the {1} that the limit leaves for it.";
    case Sentence::deviation_hold_short:
      return "The hold was too short.";
    case Sentence::deviation_hold_broken:
      return "{0} left the holding temperature range, and the {1} until the work cooled were too short for a "
             "new "
             "hold.";
    case Sentence::deviation_hold_late:
      return "{0} was not in the holding temperature range, and only {1} were left until the work cooled.";
    case Sentence::deviation_never_in_range:
      return "{0} came no nearer to the holding temperature range than {1}.";
    case Sentence::deviation_left_for_good:
      return "{0} left the holding temperature range for good before all thermocouples had been in it "
             "together.";
    case Sentence::deviation_hold_long:
      return "{0} had been at temperature for as long as the limit allows.";
    case Sentence::deviation_range_left:
      return "{0} left the holding temperature range.";
    case Sentence::deviation_little_tempering:
      return "{0} left the hold below the minimum tempering parameter.";
    case Sentence::deviation_much_tempering:
      return "{0} passed the maximum tempering parameter.";
    case Sentence::deviation_lost_after:
      return "The limit could no longer be met after {0}.";
    case Sentence::deviation_lost_then:
      return "From then on the limit could no longer be met.";

    case Sentence::shortfall_certificates:
      return "Renew the expired certificates: they must be valid on the last day of the record.";
    case Sentence::shortfall_dates:
      return "The log must have dates, so that the certificates can be compared with them.";
    case Sentence::shortfall_tolerance:
      return "The tolerance of the thermocouple at that temperature is not known.";
    case Sentence::shortfall_rest_of_record:
      return "Nothing recorded is beyond the limit; the missing readings in the findings would decide.";
    case Sentence::shortfall_with_uncertainty:
      return "The expanded uncertainty U is included.";
    case Sentence::shortfall_period:
      return "The job must name that period.";
    case Sentence::shortfall_no_hold:
      return "The thermocouples were never in the holding temperature range together.";
    case Sentence::shortfall_edge_readings:
      return "No thermocouple at the edge of the heated band has readings within the hold.";
    case Sentence::shortfall_not_in_record:
      return "The record does not show it.";
    case Sentence::shortfall_too_hot:
      return "{0} was {1} too hot at {2}.";
    case Sentence::shortfall_spread:
      return "The spread between {0} and {1} was {2} too wide at {3}.";
    case Sentence::shortfall_heated_fast:
      return "{0} heated {1} too fast: by {2} in {3}, where the limit allows {4}.";
    case Sentence::shortfall_cooled_fast:
      return "{0} cooled {1} too fast: by {2} in {3}, where the limit allows {4}.";
    case Sentence::shortfall_fast_overall:
      return "{0} is {1} too fast over the whole ramp.";
    case Sentence::shortfall_slow_ramp:
      return "{0} took {1} for the ramp; the limit allows {2}.";
    case Sentence::shortfall_hold_long:
      return "{0} was at temperature {1} too long.";
    case Sentence::shortfall_excursions:
      return "Time out of range is {0} too long.";
    case Sentence::shortfall_preheat:
      return "The thermocouples were out of the preheat range for {0}.";
    case Sentence::shortfall_gap:
      return "The longest gap between readings is {0} too long.";
    case Sentence::shortfall_interval:
      return "The sampling interval is {0} too long.";
    case Sentence::shortfall_thermocouples:
      return "The number of thermocouples with valid readings is {0} too low.";
    case Sentence::shortfall_edge_cold:
      return "{0} was {1} too cold at {2}.";
    case Sentence::shortfall_little_tempering:
      return "{0} is {1} h short of the required equivalent time at {2}.";
    case Sentence::shortfall_much_tempering:
      return "{0} has {1} h more than the allowed equivalent time at {2}.";
    case Sentence::shortfall_never_together:
      return "The thermocouples were never in the holding temperature range together; {0} are required.";
    case Sentence::shortfall_without_excursions:
      return "Without the excursions allowed the hold time is {0} short.";
    case Sentence::shortfall_hold:
      return "Hold time is {0} short.";
    case Sentence::shortfall_hold_certain:
      return "The certain hold time is {0} short; up to {1} are possible.";
    case Sentence::shortfall_hold_open:
      return "The certain hold time is {0} short; the record does not show whether the hold was longer.";
    case Sentence::shortfall_clock_started:
      return "The clock started at {0}, when {1} came into range.";
    case Sentence::shortfall_clock_stopped:
      return "The clock stopped at {0}, when {1} left the range.";
    case Sentence::shortfall_excursion_allowed:
      return "With an excursion of {0} and {1} allowed it would be {2}.";
  }
  return "";
}

}  // namespace soakwright
