// One limit of the procedure, judged: the limit, what was measured, the margin and where it was.
//
// Temperatures C, spreads C, rates C/h, times s, counts and shares 1.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace soakwright {

/// Ordered from best to worst: the worst of several is their maximum.
enum class Verdict { met, undecided, not_met };

enum class RequirementKind {
  ceiling,
  start,
  end,
  gap,
  interval,
  thermocouples,
  calibration,
  heating_rate,
  heating_rate_min,
  cooling_rate,
  cooling_rate_min,
  spread,
  hold_time,
  hold_time_max,
  hold_band,
  over,
  edge,
  tempering_min,
  tempering_max,
  keep,
};

enum class QuantityUnit { celsius, celsius_per_hour, seconds, one };

/// A rate over windows of another width, or from one end of the ramp to the other, and its verdict alone.
struct RateBasis {
  std::string over;  ///< "5 min" … "60 min", "overall"
  std::optional<double> rate_c_per_h;
  std::optional<std::string> channel;
  std::optional<double> from_s, to_s;
  Verdict verdict = Verdict::undecided;
};

/// A hold's time by the readings alone, were departures of up to `grace_s` forgiven.
struct HoldBasis {
  double grace_s = 0.0;
  double continuous_s = 0.0;
  double accumulated_s = 0.0;
};

/// When a thermocouple first came into a hold's band and last left it.
struct InAndOutBasis {
  std::string channel;
  std::optional<double> in_s, out_s;
};

/// The two readings of a widest spread.
struct SpreadBasis {
  double hottest_c = 0.0, coldest_c = 0.0;
};

/// What a requirement would have come to on another basis: nothing of it decides.
struct Basis {
  std::vector<RateBasis> rates;
  std::vector<HoldBasis> holds;
  std::vector<InAndOutBasis> thermocouples;
  std::optional<SpreadBasis> spread;
  [[nodiscard]] bool empty() const {
    return rates.empty() && holds.empty() && thermocouples.empty() && !spread;
  }
};

/// What one record of several gives to a hold's time.
struct CycleShare {
  int cycle = 1;
  double certain_s = 0.0;
  std::optional<double> possible_s;  ///< nothing where it is open
};

struct Requirement {
  std::string id;  ///< "record.ceiling", "stage-1.heating-rate" …
  RequirementKind kind = RequirementKind::ceiling;
  std::size_t stage = 0;  ///< number in the procedure, 0 for the whole record
  std::optional<std::string> weld;
  double limit = 0.0;
  bool limit_is_least = false;  ///< the measured value must be at or above the limit
  QuantityUnit unit = QuantityUnit::celsius;
  std::optional<double> measured;
  std::optional<double> margin;  ///< positive when met: what is left once U is taken off
  Verdict verdict = Verdict::undecided;
  std::optional<std::string> channel;
  std::optional<std::string> channel_2;
  std::optional<double> at_s, from_s, to_s;
  std::optional<double> standard_error;
  std::optional<double> uncertainty;  ///< U, only where the decision is guarded
  std::optional<double> certain_s, possible_s;
  /// Beside a rate: the mean rate per channel, and the worst for windows of 5, 15, 30 and 60 minutes.
  std::vector<std::pair<std::string, std::optional<double>>> overall;
  std::vector<std::pair<std::string, std::optional<double>>> by_window;
  Basis basis;
  std::vector<CycleShare> cycles;  ///< of a hold that adds up over several records, this one last
  std::string text;                ///< one plain sentence
  std::string would_need;          ///< what would have had to be different; empty where it is met
};

/// One place where a requirement is not met or cannot be shown, or a note that a reader should see.
struct Finding {
  enum class Kind { not_met, undecided, note };
  std::string requirement;
  std::optional<std::string> weld;
  Kind kind = Kind::note;
  std::optional<std::string> channel;
  std::optional<double> from_s, to_s;
  std::optional<double> extreme;
  std::string text;
};

}  // namespace soakwright
