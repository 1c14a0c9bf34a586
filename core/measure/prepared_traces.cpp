#include "core/measure/prepared_traces.h"

namespace soakwright {

std::shared_ptr<const PreparedTraces> prepare_traces(const Record& record, double interpolate_max_s) {
  auto ground = std::make_shared<PreparedTraces>();
  ground->interpolate_max_s = interpolate_max_s;
  ground->set = make_traces(record, interpolate_max_s);
  ground->ticks = row_ticks(record);
  ground->temperings = temperings_of(ground->set.traces, {record.begin_s(), record.end_s()});
  return ground;
}

}  // namespace soakwright
