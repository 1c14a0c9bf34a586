#include "core/measure/groundwork.h"

namespace soakwright {

std::shared_ptr<const Groundwork> lay_groundwork(const Record& record, double bridge_s) {
  auto ground = std::make_shared<Groundwork>();
  ground->bridge_s = bridge_s;
  ground->set = make_traces(record, bridge_s);
  ground->ticks = row_ticks(record);
  ground->temperings = temperings_of(ground->set.traces, {record.begin_s(), record.end_s()});
  return ground;
}

}  // namespace soakwright
