// SPDX-License-Identifier: GPL-3.0-or-later
// The holds of a procedure found in a made record, and records that step into a range and out of it.
#pragma once

#include <limits>
#include <variant>
#include <vector>

#include "core/measure/holds/hold_choice.h"
#include "core/measure/holds/hold_time.h"
#include "tests/core/measure/made_procedure.h"
#include "tests/core/measure/traced.h"

namespace soakwright {

class FoundHolds : public Traced {
 public:
  FoundHolds(const MadeRecord& made, const Procedure& specified)
      : Traced(made, interpolate_max_for(specified, made.record().interval_s)), procedure(specified) {
    for (std::size_t i = 0; i < procedure.stages.size(); ++i) {
      const auto* hold = std::get_if<HoldStage>(&procedure.stages[i].specified);
      if (hold == nullptr) continue;
      HoldCourse course;
      course.stage = i;
      course.low_c = hold->low.celsius();
      course.high_c = hold->high ? hold->high->celsius() : std::numeric_limits<double>::infinity();
      course.range = group_in_range(set, group, time(), course.low_c, course.high_c,
                                    procedure.evaluation.excursion_allowed);
      holds.push_back(std::move(course));
    }
    choose_holds(holds, procedure, record, set, group);
  }
  FoundHolds(const MadeRecord& made, const std::string& text) : FoundHolds(made, procedure_of(text)) {}

  [[nodiscard]] HoldTime held(std::size_t index) const {
    const auto& hold = std::get<HoldStage>(procedure.stages[holds[index].stage].specified);
    return hold_time(holds, index, hold.count, time());
  }

  Procedure procedure;
  std::vector<HoldCourse> holds;
};

/// A hold at 500 to 600 with these further keys.
inline std::string hold_500_600(const std::string& keys = "") {
  return "[[stage]]\nkind = \"hold\"\nlow = 500\nhigh = 600\ntime_min = \"1 min\"\n" + keys + "\n";
}

/// Readings every 10 s: `inside` within the given times, else `outside`. From 440 to 560 in one step the line
/// is at 500 half way, so a time given as 105..205 is exactly the time in a range from 500 on.
inline std::vector<double> stepping(std::size_t rows, const std::vector<Span>& in, double inside = 560,
                                    double outside = 440) {
  std::vector<double> values(rows, outside);
  for (std::size_t row = 0; row < rows; ++row)
    for (const Span& span : in) {
      const double t = 10.0 * static_cast<double>(row);
      if (t > span.first && t < span.second) values[row] = inside;
    }
  return values;
}

/// One channel that is in 500 to 600 in exactly these times.
inline MadeRecord in_and_out(std::size_t rows, const std::vector<Span>& in) {
  return MadeRecord::every(10, rows).column("TC1", stepping(rows, in));
}

/// A row a minute along these corners.
inline MadeRecord along(const Knots& knots) {
  return MadeRecord::every(60, static_cast<std::size_t>(knots.back().first) + 1).course("TC1", knots);
}

}  // namespace soakwright
