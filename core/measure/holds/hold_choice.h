// SPDX-License-Identifier: GPL-3.0-or-later
// Which in-range times of a record are which hold of the procedure: the continuous holds, what else belongs
// to each hold, the edges being crossed, and the hold periods.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/measure/holds/group_range.h"
#include "core/measure/traces/row_values.h"

namespace soakwright {

/// One hold of the procedure on one weld.
struct HoldCourse {
  std::size_t stage = 0;  ///< index into Procedure::stages
  double low_c = 0.0;
  double high_c = 0.0;  ///< infinite where there is no upper edge
  GroupRange range;
  std::optional<Span> continuous;
  BegunAndEnded continuous_by;       ///< members of the group that began and ended the continuous hold
  std::vector<Span> in_range;        ///< those of this hold, edges disregarded left out
  std::vector<Span> edge_crossings;  ///< those disregarded
  std::optional<Span> period;
  /// All in-range times of the hold, those disregarded included, in time order: numbers in range.in_range.
  std::vector<std::size_t> own;
  [[nodiscard]] std::vector<Span> all_in_range() const;
};

/// Fills in all but the range of every hold; `holds` come in the procedure's order with their ranges.
void choose_holds(std::vector<HoldCourse>& holds, const Procedure& procedure, const Record& record,
                  const TraceSet& set, Group group);

/// The nearest hold before and after `index` that has a continuous hold; null where there is none.
const HoldCourse* hold_before(const std::vector<HoldCourse>& holds, std::size_t index);
const HoldCourse* hold_after(const std::vector<HoldCourse>& holds, std::size_t index);

}  // namespace soakwright
