// SPDX-License-Identifier: GPL-3.0-or-later
// Limits that a procedure may give as a plain value or as a thickness rule, from TOML.
#pragma once

#include <optional>

#include "core/procedure/procedure.h"
#include "core/procedure/toml/table_reader.h"
#include "core/procedure/toml/value_readers.h"

namespace soakwright {

/// A number, or `{ over = 5500, per = "mm", at_least = 55, at_most = 220 }`.
struct RateLimitIn : InUnit {
  std::optional<RateLimit> operator()(const FoundValue& found) const;
};

/// A duration, or `{ points = [["6 mm", "15 min"], ["50 mm", "2 h"]], beyond = "15 min per 25 mm", step = "5
/// mm" }`.
std::optional<TimeLimit> time_limit(const FoundValue& found);

/// A duration, or `{ time = "3 min", depth = 5 }`.
struct ExcursionAllowedIn : InUnit {
  std::optional<ExcursionAllowed> operator()(const FoundValue& found) const;
};

}  // namespace soakwright
