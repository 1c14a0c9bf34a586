// SPDX-License-Identifier: GPL-3.0-or-later
// By how much a requirement is not met.
#pragma once

#include <string_view>

#include "core/units/sentence.h"

namespace soakwright {

/// Empty for a sentence of another section.
constexpr std::string_view shortfall_pattern(Sentence sentence) {
  switch (sentence) {
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
    case Sentence::shortfall_heating_open:
      return "{0} may have heated {1} too fast: by {2} in {3}, where the limit allows {4}.";
    case Sentence::shortfall_cooling_open:
      return "{0} may have cooled {1} too fast: by {2} in {3}, where the limit allows {4}.";
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
    default:
      return {};
  }
}

}  // namespace soakwright
