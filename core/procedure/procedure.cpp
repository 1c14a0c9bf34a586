#include "core/procedure/procedure.h"

#include <algorithm>

namespace soakwright {

double interpolate_max_for(const Procedure& procedure, double interval_s) {
  constexpr double kUsual_s = 120.0;
  if (procedure.evaluation.interpolate_max_s) return *procedure.evaluation.interpolate_max_s;
  return std::max(procedure.record_limits.gap_max_s.value_or(kUsual_s), 2.0 * interval_s);
}

}  // namespace soakwright
