// What a column of the log is by its own name and unit: a temperature, an emf, or something that is kept
// apart.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/procedure/job.h"
#include "core/read/log_table.h"

namespace soakwright {

struct ColumnKind {
  bool temperature = false;  ///< to be evaluated unless the job says otherwise; with `unit`
  bool is_degrees = false;   ///< its numbers are temperatures, whether evaluated or kept apart
  ChannelUnit unit = ChannelUnit::celsius;
  bool unit_assumed = false;
  std::string why;  ///< why it is kept apart
};

ColumnKind kind_of(const LogColumn& column);
/// The unit that the log itself says, where it is one that a channel can have.
std::optional<ChannelUnit> said_unit(const LogColumn& column);
std::string_view symbol_of(ChannelUnit unit);

}  // namespace soakwright
