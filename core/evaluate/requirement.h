// SPDX-License-Identifier: GPL-3.0-or-later
// One limit of the procedure, evaluated: the limit, what was measured, the margin and where it was.
//
// Numbers are in the core's unit of the quantity that requirement_kinds.h names for the kind.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/evaluate/requirement_kinds.h"
#include "core/units/statement.h"

namespace soakwright {

/// Ordered from best to worst: the worst of several is their maximum.
enum class Verdict { met, inconclusive, not_met };

/// A rate over windows of another width, or from one end of the ramp to the other, and its verdict alone.
struct RateAlternative {
  std::optional<int> window_minutes;  ///< nullopt: from one end of the ramp to the other
  std::optional<double> rate_c_per_h;
  std::optional<std::string> channel;
  std::optional<double> from_s, to_s;
  Verdict verdict = Verdict::inconclusive;
};

/// A hold's time by the readings alone, were excursions of up to `excursion_allowed_s` allowed.
struct HoldAlternative {
  double excursion_allowed_s = 0.0;
  double continuous_s = 0.0;
  double accumulated_s = 0.0;
  std::optional<Verdict> verdict;  ///< on the hold time, where one is required
  double deepest_k = 0.0;          ///< the deepest excursion counted in; set where the verdict is better
};

/// When a thermocouple first came into a hold's range and last left it.
struct InAndOutAlternative {
  std::string channel;
  std::optional<double> in_s, out_s;
};

/// The two readings of a widest spread.
struct SpreadAlternative {
  double hottest_c = 0.0, coldest_c = 0.0;
};

/// What a requirement comes to on another basis: nothing of it decides.
struct Alternatives {
  std::vector<RateAlternative> rates;
  std::vector<HoldAlternative> holds;
  std::vector<InAndOutAlternative> thermocouples;
  std::optional<SpreadAlternative> spread;
  [[nodiscard]] bool empty() const {
    return rates.empty() && holds.empty() && thermocouples.empty() && !spread;
  }
};

/// Excursions within `excursion_allowed` that a hold time counts in.
struct ExcursionsCounted {
  std::size_t count = 0;
  double seconds = 0.0;
};

/// What one record of several gives to a hold's time.
struct CycleShare {
  int cycle = 1;
  double certain_s = 0.0;
  std::optional<double> possible_s;  ///< nullopt if it is open
  ExcursionsCounted excursions;
  double without_excursions_s = 0.0;  ///< certain, were none allowed
};

/// One channel's time at or above a hold's lower edge, as measured, and within which bounds.
struct ChannelTime {
  std::string channel;
  double measured_s = 0.0;
  double certain_s = 0.0;
  std::optional<double> possible_s;  ///< nullopt if it is open
};

struct Requirement {
  std::string id;  ///< "record.temperature-max", "stage-1.heating-rate" …
  RequirementKind kind = RequirementKind::temperature_max;
  std::size_t stage = 0;  ///< number in the procedure, 0 for the whole record
  std::optional<std::string> weld;
  double limit = 0.0;  ///< in the core's unit of quantity(), as are measured value, margin and uncertainty
  std::optional<double> measured;
  std::optional<double> margin;  ///< positive when met: what is left once U is taken off
  Verdict verdict = Verdict::inconclusive;
  std::optional<std::string> channel;
  std::optional<std::string> channel_2;
  std::optional<double> at_s, from_s, to_s;
  std::optional<double> standard_error;
  std::optional<double> uncertainty;  ///< U, only where the decision is guarded
  std::optional<double> certain_s, possible_s;
  /// Of a hold time: the thermocouples that started and stopped the clock. Nullopt if the record's start
  /// or end did.
  std::optional<std::string> started_by, stopped_by;
  ExcursionsCounted excursions;                ///< of a hold time, as shown
  std::optional<double> without_excursions_s;  ///< of a hold time: certain, were no excursion allowed
  std::vector<ChannelTime> channel_times;      ///< of hold_time_max: each evaluated channel
  /// Beside a rate: the mean rate per channel.
  std::vector<std::pair<std::string, std::optional<double>>> overall;
  /// The steepest window of each channel, with the width that `measured` has; C/h.
  std::vector<std::pair<std::string, std::optional<double>>> steepest;
  double window_s = 0.0;  ///< that width
  /// The same of thermocouples at the edge of the heated band, to which the limit does not apply.
  std::vector<std::pair<std::string, std::optional<double>>> edge_overall, edge_steepest;
  Alternatives alternatives;
  std::vector<CycleShare> cycles;  ///< of a hold that adds up over several records, this one last
  /// What the figures do not say: why nothing was measured, or what leaves the verdict open.
  Statements remarks;

  [[nodiscard]] QuantityKind quantity() const { return facts_of(kind).quantity; }
  [[nodiscard]] std::optional<Quantity> measured_quantity() const {
    return measured ? std::optional{quantity_of(quantity(), *measured)} : std::nullopt;
  }
  /// The measured value must be at or above the limit.
  [[nodiscard]] bool limit_is_least() const { return facts_of(kind).sense == LimitSense::at_least; }
};

/// One place where a requirement is not met or cannot be shown, or a note that a reader should see.
struct Finding {
  enum class Kind { not_met, inconclusive, note };
  std::string requirement;
  std::optional<std::string> weld;
  Kind kind = Kind::note;
  std::optional<std::string> channel;
  std::optional<double> from_s, to_s;
  std::optional<Quantity> extreme;
  Statements what;  ///< empty where it is the requirement itself that is not met or inconclusive
  std::vector<std::size_t> suspects = {};  ///< indices into Course::suspects, where it is about suspicions
  bool over_whole_ramp = false;            ///< an overall rate makes it so, no window
};

}  // namespace soakwright
