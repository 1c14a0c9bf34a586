// SPDX-License-Identifier: GPL-3.0-or-later
// Rates, and the shares of several records in a hold time.
#pragma once

#include <string_view>

#include "core/units/sentence.h"

namespace soakwright {

/// Empty for a sentence of another section.
constexpr std::string_view rate_pattern(Sentence sentence) {
  switch (sentence) {
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
    default:
      return {};
  }
}

}  // namespace soakwright
