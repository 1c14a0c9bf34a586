// SPDX-License-Identifier: GPL-3.0-or-later
// The tables of a job about preheat and about the bands of a local heat treatment.
#pragma once

#include "core/procedure/job/job.h"
#include "core/procedure/toml/table_reader.h"

namespace soakwright {

/// `composition` and `minimum_preheat`, of the job or of one weld.
void read_preheat(TableReader& in, std::optional<Composition>& composition,
                  std::optional<PreheatTable>& minimum_preheat);
/// `[[band]]` of the job.
void read_bands(TableReader& in, Job& job);
/// What shows only when the whole job is read: a band of which weld, and a table that no weld uses.
void check_preheat_and_bands(TableReader& in, const Job& job);

}  // namespace soakwright
