// SPDX-License-Identifier: GPL-3.0-or-later
// Notes on suspect thermocouples and on positions on the bands.
#pragma once

#include <string_view>

#include "core/units/sentence.h"

namespace soakwright {

/// Empty for a sentence of another section.
constexpr std::string_view note_pattern(Sentence sentence) {
  switch (sentence) {
    case Sentence::suspect_thermocouple:
      return "{0} is suspect ({1}).";
    case Sentence::suspect_thermocouples:
      return "{0} are suspect ({1}).";
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
             "{2} from it, so {0} reads hotter than the edge (AWS D10.10, edition 2021, from memory, check "
             "against your edition).";
    case Sentence::beyond_heated_band:
      return "{0} is {1} from the centre of the weld, beyond the heated band of {2}.";
    case Sentence::no_position_on_band:
      return "The job gives no position for {0}, so it is not known whether {0} is on the bands.";
    case Sentence::heated_band_narrow:
      return "The heated band of {0} is narrower than {1}, the soak band and L = 2·√(R·t) on each side of it "
             "(AWS D10.10, edition 2021, from memory, check against your edition).";
    default:
      return {};
  }
}

}  // namespace soakwright
