// Which stretches of a record are which hold of the procedure: cores, what belongs to each hold, the edges
// being crossed, and spans (contract, "Core and span").
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/measure/group_band.h"
#include "core/measure/row_values.h"

namespace soakwright {

/// One hold of the procedure on one weld.
struct HoldCourse {
  std::size_t stage = 0;  ///< index into Procedure::stages
  double low_c = 0.0;
  double high_c = 0.0;  ///< infinite where there is no upper edge
  GroupBand band;
  std::optional<Span> core;
  std::vector<Span> stretches;  ///< those of this hold, edges set aside left out
  std::vector<Span> set_aside;
  std::optional<Span> span;
};

/// Fills in core, stretches, set_aside and span of every hold; `holds` come in the procedure's order with
/// their bands.
void choose_holds(std::vector<HoldCourse>& holds, const Procedure& procedure, const Record& record,
                  const TraceSet& set, Group group);

/// The nearest cored hold before and after `index`.
const HoldCourse* cored_before(const std::vector<HoldCourse>& holds, std::size_t index);
const HoldCourse* cored_after(const std::vector<HoldCourse>& holds, std::size_t index);

}  // namespace soakwright
