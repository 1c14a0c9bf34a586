// SPDX-License-Identifier: GPL-3.0-or-later
// The tables that a procedure file and a file of a published rule have in common.
#pragma once

#include "core/procedure/procedure.h"
#include "core/procedure/toml/table_reader.h"
#include "core/procedure/toml/value_readers.h"

namespace soakwright {

/// `source`, `edition`, `clause` and `flag`.
void read_provenance(TableReader& in, Provenance& provenance);
/// The keys of `[record]`.
void read_record_limits(TableReader& in, InUnit unit, RecordLimits& limits);
/// The keys of a `[[stage]]`; `stage.number` is left as it is.
void read_stage(TableReader& in, InUnit unit, Stage& stage);
/// Complains about `spread_within` without `spread_max`.
void check_spread_within(TableReader& in);

}  // namespace soakwright
