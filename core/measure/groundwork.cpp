#include "core/measure/groundwork.h"

#include "core/measure/side_by_side.h"

namespace soakwright {

std::shared_ptr<const Groundwork> lay_groundwork(const Record& record, double bridge_s) {
  auto ground = std::make_shared<Groundwork>();
  ground->bridge_s = bridge_s;
  ground->set = make_traces(record, bridge_s);
  ground->ticks = row_ticks(record);
  const std::vector<Trace>& traces = ground->set.traces;
  ground->temperings.resize(traces.size());
  side_by_side(traces.size(), [&](std::size_t i) {
    ground->temperings[i] = tempering_of(traces[i], {record.begin_s(), record.end_s()});
  });
  return ground;
}

}  // namespace soakwright
