// SPDX-License-Identifier: GPL-3.0-or-later
// A made record with its traces, and times as text, for tests of measurements.
#pragma once

#include <cmath>
#include <locale>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/measure/holds/group_range.h"
#include "core/measure/traces/trace.h"
#include "tests/core/measure/made_record.h"

namespace soakwright {

/// Equal to within `margin`, by default the slack against limits.
inline Approx close_to(double value, double margin = 1e-6) { return Approx(value).epsilon(0).margin(margin); }

/// A record, its traces, and its evaluated channels as a group. Traces point into the record: it stays in
/// place.
class Traced {
 public:
  explicit Traced(const MadeRecord& made, double interpolate_max_s = 120.0,
                  const std::vector<UnmeasuredTime>& unmeasured = {})
      : record(made.record()), set(make_traces(record, interpolate_max_s, unmeasured)) {
    for (std::size_t i = 0; i < set.traces.size(); ++i)
      if (record.channels[set.traces[i].channel].evaluated()) group.push_back(i);
  }
  Traced(const Traced&) = delete;
  Traced& operator=(const Traced&) = delete;

  [[nodiscard]] Span time() const { return {record.begin_s(), record.end_s()}; }
  [[nodiscard]] const Trace& trace(const std::string& name) const {
    for (const Trace& trace : set.traces)
      if (trace.name == name) return trace;
    FAIL("no trace " << name);
    return set.traces.front();
  }

  Record record;
  TraceSet set;
  std::vector<std::size_t> group;
};

/// A number to a thousandth, without idle zeros.
inline std::string say(double value) {
  std::ostringstream text;
  text.imbue(std::locale::classic());
  text.precision(12);
  text << std::round(value * 1000.0) / 1000.0;
  return text.str();
}
inline std::string say(const Span& span) {
  std::string text = say(span.first);
  text += "..";
  text += say(span.second);
  return text;
}
inline std::string say(const std::optional<double>& value) { return value ? say(*value) : "none"; }
inline std::string say(const std::optional<Span>& span) { return span ? say(*span) : "none"; }
/// All of a list, spaces between.
template <typename T>
std::string say(const std::vector<T>& list) {
  std::string text;
  for (const T& one : list) {
    if (!text.empty()) text += ' ';
    text += say(one);
  }
  return text;
}

}  // namespace soakwright
