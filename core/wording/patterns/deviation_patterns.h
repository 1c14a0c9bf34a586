// SPDX-License-Identifier: GPL-3.0-or-later
// Where a run first left a limit that is not met.
#pragma once

#include <string_view>

#include "core/units/sentence.h"

namespace soakwright {

/// Empty for a sentence of another section.
constexpr std::string_view deviation_pattern(Sentence sentence) {
  switch (sentence) {
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
             "new hold.";
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
    default:
      return {};
  }
}

}  // namespace soakwright
