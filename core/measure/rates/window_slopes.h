// SPDX-License-Identifier: GPL-3.0-or-later
// Least-squares slopes over sliding windows, exact: readings and times enter as integers, so that no slope
// depends on how the sums were built.
//
// Slope b = (n Σtv − Σt Σv) / (n Σt² − (Σt)²), ordinary least squares of v on t. Its standard error is s /
// √Sxx with Sxx = Σt² − (Σt)²/n (NIST/SEMATECH e-Handbook of Statistical Methods, 4.1.4.1, and GUM H.3).
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/measure/traces/trace.h"

namespace soakwright {

/// Samples [base, base + size) of a source as integers: times in ticks, readings in units, and what one of
/// each is worth.
struct IntegerSamples {
  std::size_t base = 0;
  std::span<const std::int64_t> ticks;
  std::vector<std::int64_t> own_ticks;  ///< storage behind `ticks` where rows are missing
  std::vector<std::int64_t> units;
  std::int64_t largest_unit = 0;  ///< no unit is larger in size
  std::int64_t even_step = 0;     ///< the step in ticks where all steps are equal, else 0
  std::int64_t least_step = 1;    ///< no step between rows is shorter, in ticks
  /// Samples after which the step is longer than `least_step`, where few are: a row missing here and there.
  /// Nothing where steps are even, or of many lengths.
  std::optional<std::vector<std::size_t>> longer_steps;
  double tick_s = 1.0;
  double unit_k = 1.0;
  [[nodiscard]] std::int64_t tick(std::size_t sample) const { return ticks[sample - base]; }
  [[nodiscard]] std::int64_t unit(std::size_t sample) const { return units[sample - base]; }
};

/// The record's times in the longest tick that all of them are whole multiples of.
struct RowTicks {
  std::vector<std::int64_t> ticks;  ///< of the evaluated rows
  double tick_s = 1.0;
  std::int64_t even_step = 0;   ///< in ticks where all steps are equal, else 0
  std::int64_t least_step = 1;  ///< no step is shorter
  /// Rows after which the step is longer, where few are and steps are not even.
  std::optional<std::vector<std::size_t>> longer_steps;
};
RowTicks row_ticks(const Record& record);

/// Samples [first, end) of a source; `rows` must outlive them.
IntegerSamples integer_samples(const Record& record, const RowTicks& rows, const TraceSource& source,
                               std::size_t first, std::size_t end);

/// What a slope was fitted over: its standard error is the readings' noise divided by root_sxx_h.
struct WindowSlope {
  double at_s = 0.0;
  double from_s = 0.0;
  double to_s = 0.0;
  double slope_c_per_h = 0.0;
  double root_sxx_h = 0.0;  ///< √Sxx in hours
  std::size_t samples = 0;
};

/// The x side of a fit, shared by all windows with the same pattern of times.
struct WindowShape {
  double samples = 0.0;
  double denominator = 0.0;  ///< n Σt² − (Σt)², ticks²
};

inline constexpr std::size_t kFewestForSlope = 5;

/// Goes through every window of `width_s` centred on a sample of [first, end) that lies wholly within `part`
/// and holds at least five of these samples, in time order, and calls visit(sample, sign * slope in C/h,
/// WindowShape). A window may be left out where sign * slope is not above what of_interest_above(WindowShape)
/// says, which is asked before the first, again after each visit, and for other shapes; the less Σt² −
/// (Σt)²/n of a shape, the less it must be. Returns whether there is any window.
template <typename Interest, typename Visit>
bool visit_windows(const TraceSource& source, const IntegerSamples& samples, std::size_t first,
                   std::size_t end, Span part, double width_s, double sign, Interest&& of_interest_above,
                   Visit&& visit);

/// The whole window about a sample that was visited.
WindowSlope window_about(const TraceSource& source, const IntegerSamples& samples, std::size_t sample,
                         double width_s, double slope_c_per_h, const WindowShape& shape);

/// The x side of a fit over samples [first, end).
WindowShape shape_over(const IntegerSamples& samples, std::size_t first, std::size_t end);

/// The slope over all samples [first, end) of a part; nothing for fewer than five.
std::optional<WindowSlope> slope_over(const IntegerSamples& samples, std::size_t first, std::size_t end,
                                      Span part);

}  // namespace soakwright

#include "core/measure/rates/window_slopes_inline.h"
