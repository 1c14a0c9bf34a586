// Which in_range of a record are which hold of the procedure: continuous_holds, what belongs to each hold,
// the edges being crossed, and spans (contract, "Core and span").
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/measure/group_range.h"
#include "core/measure/row_values.h"

namespace soakwright {

/// One hold of the procedure on one weld.
struct HoldCourse {
  std::size_t stage = 0;  ///< index into Procedure::stages
  double low_c = 0.0;
  double high_c = 0.0;  ///< infinite where there is no upper edge
  GroupRange range;
  std::optional<Span> continuous;
  std::vector<Span> in_range;  ///< those of this hold, edges disregarded left out
  std::vector<Span> edge_crossings;
  std::optional<Span> period;
};

/// Fills in core, in_range, edge_crossings and span of every hold; `holds` come in the procedure's order with
/// their ranges.
void choose_holds(std::vector<HoldCourse>& holds, const Procedure& procedure, const Record& record,
                  const TraceSet& set, Group group);

/// The nearest cored hold before and after `index`.
const HoldCourse* hold_before(const std::vector<HoldCourse>& holds, std::size_t index);
const HoldCourse* hold_after(const std::vector<HoldCourse>& holds, std::size_t index);

}  // namespace soakwright
