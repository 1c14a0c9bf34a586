#include "core/procedure/procedure.h"

#include <algorithm>

namespace soakwright {

double bridge_for(const Procedure& procedure, double interval_s) {
  constexpr double kUsual_s = 120.0;
  if (procedure.judging.bridge_s) return *procedure.judging.bridge_s;
  return std::max(procedure.whole_record.gap_max_s.value_or(kUsual_s), 2.0 * interval_s);
}

}  // namespace soakwright
