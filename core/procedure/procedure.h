// SPDX-License-Identifier: GPL-3.0-or-later
// What is specified: a heat treatment procedure as a plain value.
//
// Made by read_procedure() (procedure_file.h) from TOML. Every temperature is in degrees Celsius, every rate
// in degrees Celsius per hour and every time in seconds, whatever the file's unit. A limit that is absent is
// no requirement.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/procedure/thickness_rule.h"
#include "core/units/temperature.h"
#include "core/units/thickness.h"

namespace soakwright {

/// Where a limit comes from, printed beside it in the report.
struct Provenance {
  /// Seen in print; from memory, not compared with a published text; proposed from a recorded cycle, which is
  /// no requirement.
  enum class Flag { seen, memory, proposal };
  std::optional<std::string> source;
  std::optional<std::string> edition;
  std::optional<std::string> clause;
  std::optional<Flag> flag;
  bool operator==(const Provenance&) const = default;
};

enum class Decision { simple, guarded };

/// An excursion no longer than `time_s`, and no deeper than `depth` where one is given, does not break a
/// hold.
struct ExcursionAllowed {
  double time_s = 0.0;
  std::optional<TemperatureDifference> depth;
  bool operator==(const ExcursionAllowed&) const = default;
};

struct Evaluation {
  double rate_window_s = 900.0;
  Decision decision = Decision::simple;
  std::optional<double>
      interpolate_max_s;  ///< as given; the default depends on the record (interpolate_max_for())
  ExcursionAllowed excursion_allowed;
  double in_range_min_s = 120.0;
  double tempering_constant = 20.0;  ///< C of the Hollomon-Jaffe parameter
  /// Where the tempering is given in equivalent hours; without it `low` of the last hold.
  std::optional<Temperature> tempering_reference;
  bool operator==(const Evaluation&) const = default;
};

struct RecordLimits {
  std::optional<Temperature> temperature_max;
  std::optional<Temperature> start_temperature_max;
  std::optional<Temperature> end_temperature_max;
  std::optional<double> gap_max_s;
  std::optional<double> sampling_interval_max_s;
  std::optional<int> thermocouples_min;
  bool operator==(const RecordLimits&) const = default;
};

/// A heat or a cool stage.
struct RampStage {
  enum class Direction { heat, cool };
  Direction direction = Direction::heat;
  std::optional<Temperature> above;
  std::optional<Temperature> below;
  std::optional<RateLimit> rate_max;
  std::optional<HeatingRate> rate_min;
  std::optional<TemperatureDifference> spread_max;
  std::optional<double> spread_within_m;
  bool operator==(const RampStage&) const = default;
};

struct HoldStage {
  enum class Count { continuous, accumulated };
  Temperature low;
  std::optional<Temperature> high;
  std::optional<TimeLimit> time_min;
  std::optional<double> time_max_s;
  Count count = Count::continuous;
  std::optional<double> excursion_time_max_s;
  std::optional<TemperatureDifference> spread_max;
  std::optional<double> spread_within_m;
  std::optional<double> edge_fraction_min;  ///< a share of `low` in the procedure's own unit
  std::optional<double> tempering_min;      ///< Hollomon-Jaffe parameter / 1000
  std::optional<double> tempering_max;
  bool operator==(const HoldStage&) const = default;
};

struct MaintainStage {
  Temperature low;
  std::optional<Temperature> high;
  std::string during;  ///< the name of a period of the job
  bool operator==(const MaintainStage&) const = default;
};

struct Stage {
  std::size_t number = 0;  ///< place in the procedure, from 1
  std::size_t line = 0;    ///< in the file
  Provenance provenance;
  std::variant<RampStage, HoldStage, MaintainStage> specified;
  bool operator==(const Stage&) const = default;
};

struct Procedure {
  std::string file;    ///< as the user named it
  std::string sha256;  ///< of the file's bytes, hexadecimal
  std::string number;
  std::optional<std::string> revision;
  std::optional<std::string> title;
  TemperatureUnit unit = TemperatureUnit::celsius;
  std::optional<Thickness> thickness;
  Provenance provenance;
  Evaluation evaluation;
  RecordLimits record_limits;
  std::vector<Stage> stages;
  bool operator==(const Procedure&) const = default;
};

/// The stage's `spread_within` in metres; nullopt if it has none.
std::optional<double> spread_within_of(const Stage& stage);

/// The longest gap that is interpolated by a straight line: as given; else gap_max, or 2 min, but never less
/// than two intervals.
double interpolate_max_for(const Procedure& procedure, double interval_s);

}  // namespace soakwright
