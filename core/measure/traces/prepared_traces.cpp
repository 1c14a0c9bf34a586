// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/traces/prepared_traces.h"

#include <utility>

namespace soakwright {

std::shared_ptr<const PreparedTraces> prepare_traces(const Record& record, double interpolate_max_s,
                                                     std::vector<UnmeasuredTime> unmeasured,
                                                     double tempering_constant) {
  auto ground = std::make_shared<PreparedTraces>();
  ground->interpolate_max_s = interpolate_max_s;
  ground->unmeasured = std::move(unmeasured);
  ground->tempering_constant = tempering_constant;
  ground->set = make_traces(record, interpolate_max_s, ground->unmeasured);
  ground->ticks = row_ticks(record);
  ground->temperings =
      temperings_of(ground->set.traces, {record.begin_s(), record.end_s()}, tempering_constant);
  return ground;
}

}  // namespace soakwright
