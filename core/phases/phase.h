// What the record shows by itself, with no procedure: phases and suspect channels.
#pragma once

#include <string>
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

struct Suspect {
  enum class Code { open, stuck, reversed, detached, noisy, lag };
  std::size_t channel = 0;  ///< index into Record::channels
  Code code = Code::stuck;
  double from_s = 0.0;
  double to_s = 0.0;
  std::string text;
};

struct Course {
  std::vector<Phase> phases;
  std::vector<Suspect> suspects;
};

}  // namespace soakwright
