// What a column of the log is by its own name and unit: a temperature, an emf, or something that is kept
// apart.
#pragma once

#include <string>

#include "core/procedure/job.h"
#include "core/read/log_table.h"

namespace soakwright {

struct ColumnKind {
  bool temperature = false;  ///< to be judged unless the job says otherwise; with `unit`
  bool is_degrees = false;   ///< its numbers are temperatures, whether judged or kept apart
  ChannelUnit unit = ChannelUnit::celsius;
  bool unit_assumed = false;
  std::string why;  ///< why it is kept apart
};

ColumnKind kind_of(const LogColumn& column);

}  // namespace soakwright
