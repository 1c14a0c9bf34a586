// Everything that judging a record against a procedure gives: requirements, findings, and the course of each
// stage, for every weld, and the verdict.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/judge/requirement.h"

namespace soakwright {

using TimeSpan = std::pair<double, double>;  ///< from, to in seconds

struct StageChannel {
  std::string name;
  std::optional<double> in_s, out_s;  ///< first entry into the band, last exit from it (holds only)
  std::optional<double> min_c, max_c, mean_c;
  std::optional<double> tempering;        ///< Hollomon-Jaffe parameter / 1000
  std::optional<double> tempering_hours;  ///< worth the same at the hold's `low`
};

struct StageCourse {
  std::optional<std::string> weld;
  std::size_t number = 0;
  std::string kind;  ///< heat, hold, cool, keep
  std::optional<double> start_s, end_s;
  std::optional<TimeSpan> core;
  std::vector<TimeSpan> stretches;
  std::vector<TimeSpan> set_aside;
  std::vector<StageChannel> channels;
};

struct WeldVerdict {
  std::optional<std::string> number;
  std::optional<double> thickness_mm;
  Verdict verdict = Verdict::met;
};

/// A spare that took over.
struct Replacement {
  std::string channel;
  std::string by;
  double from_s = 0.0;
  std::optional<double> step_k;
};

struct Verdicts {
  std::vector<Replacement> replaced;
  std::vector<WeldVerdict> welds;
  std::vector<StageCourse> stages;
  std::vector<Requirement> requirements;
  std::vector<Finding> findings;
  Verdict verdict = Verdict::met;
};

}  // namespace soakwright
