// SPDX-License-Identifier: GPL-3.0-or-later
// The wall thickness that the bands of a local heat treatment are worked out from.
#pragma once

#include <optional>

#include "core/procedure/job/job.h"
#include "core/procedure/procedure.h"

namespace soakwright {

/// The band's own `wall`, else the thickness of its weld, else the procedure's; nullopt where none says it.
/// `procedure` may be null.
std::optional<Thickness> wall_of(const BandEntry& band, const Job& job, const Procedure* procedure);

}  // namespace soakwright
