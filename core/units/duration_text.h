// SPDX-License-Identifier: GPL-3.0-or-later
// Durations from the text of procedure and job files: `90 s`, `95 min`, `1.5 h`, `1 h 35 min`.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace soakwright {

/// Seconds. Parts in h, min and s, each at most once and the larger first; only the last may have a fraction.
/// A minus may stand before the first and counts for the whole. Nothing for anything else.
std::optional<double> parse_duration(std::string_view text);

}  // namespace soakwright
