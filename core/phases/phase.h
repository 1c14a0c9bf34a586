// SPDX-License-Identifier: GPL-3.0-or-later
// What the record shows by itself, with no procedure: phases and suspect channels.
#pragma once

#include <cstddef>
#include <vector>

namespace soakwright {

struct Phase {
  enum class Kind { heat, hold, cool, idle };
  Kind kind = Kind::idle;
  double start_s = 0.0;
  double end_s = 0.0;
  double rate_c_per_h = 0.0;  ///< mean over the phase; negative where it cools
  double level_c = 0.0;       ///< median of the evaluated group's course
  double spread_max_k = 0.0;
};

/// What a suspicion rests on, as facts; core/wording/suspect_words.h says it. Which of the quantities mean
/// something is written beside each kind.
struct SuspectEvidence {
  enum class Kind {
    no_reading,             ///< seconds
    value_of_no_work,       ///< value_c, seconds; alone where there are no others to hold it against
    repeats_reading,        ///< value_c, count of readings, seconds
    all_repeat_row,         ///< value_c (this channel's), count of rows, seconds
    held_over_rows,         ///< count of rows on which all channels repeat each reading, seconds they last
    stands_as_others_move,  ///< value_c, seconds; low_c to high_c is where the others move
    never_moves,            ///< low_c to high_c; change_k is what the least of the others moves
    equals_channel,         ///< other, count of readings
    equals_set_point,       ///< other_column, count of readings
    equals_earlier_rows,    ///< earlier_from_s to earlier_to_s, count of rows
    ends_at_reading,        ///< value_c, count of readings, seconds; highest or lowest
    opposite_to_others,     ///< change_k, others_k
    below_ambient,          ///< value_c, others_c
    sudden_step,            ///< change_k, seconds
    scatter,                ///< change_k and others_k, standard deviations
    frequent_jumps,         ///< count of jumps, change_k the largest
    spike,                  ///< value_c, change_k against the readings beside it, count of readings
    delay,                  ///< seconds (negative: ahead), change_k explained by it, others_k left over
  };
  Kind kind = Kind::no_reading;
  double value_c = 0.0;
  double others_c = 0.0;
  double low_c = 0.0;
  double high_c = 0.0;
  double change_k = 0.0;
  double others_k = 0.0;
  double seconds = 0.0;
  std::size_t count = 0;
  std::size_t other = 0;         ///< index into Record::channels
  std::size_t other_column = 0;  ///< index into Record::other_columns
  double earlier_from_s = 0.0;
  double earlier_to_s = 0.0;
  bool alone = false;
  bool highest = false;
};

struct Suspect {
  enum class Code { open, stuck, copied, clipped, reversed, detached, noisy, spike, lag };
  std::size_t channel = 0;  ///< index into Record::channels
  Code code = Code::stuck;
  double from_s = 0.0;  ///< first and last reading on which it shows
  double to_s = 0.0;
  SuspectEvidence evidence;
  /// Whether such readings are no measurement of the work at all.
  [[nodiscard]] bool no_measurement() const {
    return code == Code::open || code == Code::stuck || code == Code::copied || code == Code::clipped;
  }
};

struct Course {
  std::vector<Phase> phases;
  std::vector<Suspect> suspects;
};

}  // namespace soakwright
