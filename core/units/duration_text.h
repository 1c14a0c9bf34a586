// Durations from text and to text: `90 s`, `95 min`, `1.5 h`, `1 h 35 min`.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace soakwright {

/// Seconds. Parts in h, min and s, each at most once and the larger first; only the last may have a fraction.
/// A minus may stand before the first and counts for the whole. Nothing for anything else.
std::optional<double> parse_duration(std::string_view text);

/// For people: `1 h 35 min`, `2 min 30 s`, `0 s`; seconds with at most three places.
std::string duration_text(double seconds);

}  // namespace soakwright
