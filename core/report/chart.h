// SPDX-License-Identifier: GPL-3.0-or-later
// What the chart of a record shows, with no layout: traces by channel, what is required of them, what the
// record shows by itself, and where the findings are.
//
// Temperatures in C and times in seconds from the first sample, whatever unit the chart is printed in. Every
// text is ready to be drawn, in the unit of the report.
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/evaluate/requirement.h"
#include "core/phases/phase.h"
#include "core/record/record.h"
#include "core/units/temperature.h"

namespace soakwright {

struct ChartTrace {
  enum class Role { evaluated, edge, spare, air, set_point, off };
  std::size_t channel = 0;  ///< index into Record::channels
  std::string tag;          ///< short and unique: "1", "2" …; set at the trace's end and in the legend
  std::string name;
  std::string legend;  ///< name and role in words: "TC3 inside, 90° (spare for TC1)"
  Role role = Role::evaluated;
  Readings readings;      ///< shares the record's storage
  bool excluded = false;  ///< a person took all of it out of the evaluation: drawn grey all the same
};

/// The range of a hold or of a maintain stage.
struct ChartRange {
  std::size_t stage = 0;
  std::optional<std::string> weld;
  double from_s = 0.0, to_s = 0.0;
  bool reached = false;  ///< false: no hold was found, the range is drawn over the whole record
  double low_c = 0.0;
  std::optional<double> high_c;
  std::string text;
};

/// A temperature that something was held against.
struct ChartLevel {
  enum class Kind {
    temperature_max,
    start_temperature_max,
    end_temperature_max,
    evaluated_above,
    evaluated_below
  };
  Kind kind = Kind::temperature_max;
  double level_c = 0.0;
  double from_s = 0.0, to_s = 0.0;
  std::string text;
  std::vector<std::size_t> stages = {};  ///< whose limit it is, by number; none: of the whole record
};

/// A named part of the time axis: a stage as evaluated, or a phase that the record shows by itself.
struct ChartSegment {
  enum class Kind { heat, hold, cool, idle, maintain, period };
  Kind kind = Kind::idle;
  std::optional<std::string> weld;
  double from_s = 0.0, to_s = 0.0;
  std::string text;
};

/// Where a finding stands.
struct ChartMark {
  std::size_t finding = 0;  ///< index into Report::findings and Verdicts::findings
  Finding::Kind kind = Finding::Kind::note;
  std::size_t event = 0;  ///< number of the finding's event, from 1
  std::string tag;        ///< the same as text
  std::optional<std::size_t> trace;
  double from_s = 0.0, to_s = 0.0;
  std::optional<double> level_c;
};

/// A note by hand, a take-over by a spare.
struct ChartNote {
  double at_s = 0.0;
  std::optional<std::size_t> trace;
  std::string text;
};

/// A time of a trace that was excluded.
struct ChartExclusion {
  std::size_t trace = 0;
  double from_s = 0.0, to_s = 0.0;
};

struct ChartPoint {
  double at_s = 0.0;
  double level_c = 0.0;
  std::string text;
};

/// What was measured for one requirement, so that it can be drawn: the traces it was read from, the time it
/// covers, the fitted line, the points (crossings, extremes, the two ends of a spread).
struct Evidence {
  std::vector<std::size_t> traces;  ///< indices into Chart::traces; the first is the one that was measured
  std::optional<double> from_s, to_s;
  std::optional<double> at_s;
  std::optional<double> level_c;                         ///< the limit, where it is a temperature
  std::optional<std::pair<ChartPoint, ChartPoint>> fit;  ///< the straight line of a rate
  std::vector<ChartPoint> points;
};

struct Chart {
  std::shared_ptr<const Record> record;  ///< the time axis
  TemperatureUnit unit = TemperatureUnit::celsius;
  bool has_days = false;  ///< the time axis is labelled with days too; otherwise it is elapsed time
  double begin_s = 0.0, end_s = 0.0;  ///< of the whole record
  double evaluated_from_s = 0.0, evaluated_to_s = 0.0;
  double interpolate_max_s = 0.0;  ///< a trace is broken where its readings are further apart
  std::string title;
  std::string time_axis, temperature_axis;
  std::vector<ChartTrace> traces;
  std::vector<ChartRange> ranges;
  std::vector<ChartLevel> levels;
  std::vector<ChartSegment> stages;
  std::vector<ChartSegment> phases;
  std::vector<ChartSegment> periods;
  std::vector<ChartMark> marks;
  std::vector<ChartNote> remarks;
  std::vector<ChartNote> takeovers;
  std::vector<ChartNote> deviations;  ///< the first deviation, where a limit is missed
  std::vector<ChartExclusion> exclusions;
};

}  // namespace soakwright
