// SPDX-License-Identifier: GPL-3.0-or-later
// The columns of the log as channels and as columns that are not evaluated, with what the job says about
// them.
#pragma once

#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/procedure/job/job.h"
#include "core/read/log_table.h"
#include "core/record/column_kind.h"
#include "core/record/record.h"

namespace soakwright {

struct Channels {
  std::vector<Channel> channels;
  std::vector<OtherColumn> other_columns;
  std::vector<Notice> notices;
};

/// `kinds` has one for each column of the table; `job` may be null. Readings share the table's store.
Result<Channels> make_channels(LogTable& table, std::vector<ColumnKind> kinds, const std::string& path,
                               const Job* job);

}  // namespace soakwright
