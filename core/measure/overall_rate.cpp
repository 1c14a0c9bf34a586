// Mean rates over a whole ramp, from crossing to crossing.
#include <optional>

#include "core/measure/rate.h"

namespace soakwright {
namespace {

struct Point {
  double t = 0.0;
  double c = 0.0;
};

std::optional<Point> point_at(const Trace& trace, double t) {
  const auto c = temperature_at(trace, t);
  return c ? std::optional<Point>{{t, *c}} : std::nullopt;
}

std::optional<Point> at_level(std::optional<double> t, double level) {
  return t ? std::optional<Point>{{*t, level}} : std::nullopt;
}

/// From where to where one channel's ramp runs; nothing where the record does not show both ends.
struct Ends {
  std::optional<Point> from, to;
};

Ends heating(const Trace& trace, const StageTime& when, const RampStage& stage, double low_c) {
  Ends ends;
  const double core = when.hold_after->continuous->first;
  ends.from = stage.above
                  ? at_level(last_rise_through(trace, stage.above->celsius(), core), stage.above->celsius())
                  : point_at(trace, when.time.first);
  if (ends.from) ends.to = at_level(first_rise_through(trace, low_c, ends.from->t), low_c);
  return ends;
}

Ends cooling(const Trace& trace, const StageTime& when, const RampStage& stage, double low_c) {
  Ends ends;
  const double span = when.hold_before->period->second;
  ends.to = stage.above
                ? at_level(first_fall_through(trace, stage.above->celsius(), span), stage.above->celsius())
                : point_at(trace, when.time.second);
  if (ends.to) ends.from = at_level(last_fall_through(trace, low_c, ends.to->t), low_c);
  return ends;
}

}  // namespace

std::vector<OverallRate> overall_rates(const TraceSet& set, Group group, const StageTime& when,
                                       const RampStage& stage) {
  const bool heat = stage.direction == RampStage::Direction::heat;
  const HoldCourse* hold = heat ? when.hold_after : when.hold_before;
  std::vector<OverallRate> rates;
  for (const std::size_t index : group) {
    OverallRate rate;
    rate.trace = index;
    const Trace& trace = set.traces[index];
    if (hold != nullptr) {
      const Ends ends =
          heat ? heating(trace, when, stage, hold->low_c) : cooling(trace, when, stage, hold->low_c);
      if (ends.from && ends.to) {
        rate.from_s = ends.from->t;
        rate.to_s = ends.to->t;
        const bool taken_over =
            trace.take_over_s && *trace.take_over_s > rate.from_s && *trace.take_over_s < rate.to_s;
        if (rate.to_s > rate.from_s && !taken_over)
          rate.rate_c_per_h =
              (heat ? 1.0 : -1.0) * (ends.to->c - ends.from->c) / (rate.to_s - rate.from_s) * 3600.0;
      }
    }
    rates.push_back(rate);
  }
  return rates;
}

}  // namespace soakwright
