// The sentences that the core can say, by what they state. Each has its words in
// core/wording/statement_words.cpp.
#pragma once

namespace soakwright {

enum class Sentence {
  none,

  // The first deviation from a limit that is not met (core/explain).
  deviation_maximum_exceeded,
  deviation_spread_exceeded,
  deviation_preheat_left,
  deviation_few_thermocouples,
  deviation_loaded_hot,
  deviation_unloaded_hot,
  deviation_gap_long,
  deviation_interval_long,
  deviation_certificate_expired,
  deviation_edge_cold,
  deviation_heated_fast,
  deviation_cooled_fast,
  deviation_ramp_slow,
  deviation_hold_short,
  deviation_hold_broken,
  deviation_hold_late,
  deviation_never_in_range,
  deviation_left_for_good,
  deviation_hold_long,
  deviation_range_left,
  deviation_little_tempering,
  deviation_much_tempering,
  deviation_lost_after,
  deviation_lost_then,
};

}  // namespace soakwright
