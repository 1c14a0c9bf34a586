// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/rates/overall_rate.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/measure/rates/crossing_without_spike.h"
#include "core/measure/rates/rate.h"

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

/// From where to where one channel's ramp runs; nullopt if the record does not show both ends.
struct Ends {
  std::optional<Point> from, to;
};

/// Crossings of one level by one channel.
class Crossings {
 public:
  Crossings(const Trace& trace, double level_c)
      : level_c_(level_c), spans_(range_spans(trace, level_c, std::numeric_limits<double>::infinity())) {}

  /// The crossing at `from` or an earlier one in the same way, as long as the channel was back for a brief
  /// time only: where it first crossed and stayed but for that.
  [[nodiscard]] Point first_that_stays(const Point& from, double brief_s) const {
    std::size_t i = begun_at(from.t);
    double at = from.t;
    while (i != npos && i >= 3 && joined(i - 1, i) && joined(i - 2, i - 1) && joined(i - 3, i - 2) &&
           length(i - 1) <= brief_s) {
      i -= 2;
      at = spans_[i].from;
    }
    return {at, level_c_};
  }
  /// The crossing at `to` or a later one in the same way, behind which the channel does not go back within a
  /// brief time, unless it is there at `settled_s`.
  [[nodiscard]] std::optional<Point> next_that_stays(const Point& to, double brief_s,
                                                     double settled_s) const {
    for (std::size_t i = begun_at(to.t); i != npos && i < spans_.size(); i += 2) {
      if (length(i) > brief_s || (spans_[i].from <= settled_s && spans_[i].to >= settled_s))
        return Point{spans_[i].from, level_c_};
      if (i + 2 >= spans_.size() || !joined(i, i + 1) || !joined(i + 1, i + 2)) return std::nullopt;
    }
    return std::nullopt;
  }

 private:
  static constexpr std::size_t npos = static_cast<std::size_t>(-1);
  [[nodiscard]] double length(std::size_t i) const { return spans_[i].to - spans_[i].from; }
  [[nodiscard]] bool joined(std::size_t i, std::size_t next) const {
    return spans_[i].piece == spans_[next].piece && spans_[i].state != spans_[next].state;
  }
  [[nodiscard]] std::size_t begun_at(double t) const {
    const auto at = std::find_if(spans_.begin(), spans_.end(), [&](const RangeSpan& span) {
      return std::fabs(span.from - t) <= kWindowSlack_s;
    });
    return at == spans_.end() ? npos : static_cast<std::size_t>(at - spans_.begin());
  }

  double level_c_;
  std::vector<RangeSpan> spans_;
};

/// One channel in one stage beside a hold.
class Ramp {
 public:
  Ramp(const Trace& trace, const StageTime& when, const RampStage& stage)
      : trace_(trace),
        when_(when),
        stage_(stage),
        heats_(stage.direction == RampStage::Direction::heat),
        hold_(heats_ ? *when.hold_after : *when.hold_before),
        hot_c_(stage.below ? std::min(hold_.low_c, stage.below->celsius()) : hold_.low_c) {}

  [[nodiscard]] Ends ends() {
    if (stage_.above) {
      const double above = stage_.above->celsius();
      const auto at = heats_ ? last_rise_through(trace_, above, hold_.continuous->first)
                             : first_fall_through(trace_, above, hold_.period->second);
      const bool in_another = at && (heats_ ? when_.hold_before != nullptr && *at < when_.time.first
                                            : when_.hold_after != nullptr && *at > when_.time.second);
      at_above_ = !in_another;
      if (at_above_) cold_ = at_level(at, above);
    }
    if (!at_above_) cold_ = point_at(trace_, heats_ ? when_.time.first : when_.time.second);
    if (!cold_) return {};
    if (heats_) return {cold_, at_level(first_rise_through(trace_, hot_c_, cold_->t), hot_c_)};
    auto from = at_level(last_fall_through(trace_, hot_c_, cold_->t), hot_c_);
    // One within the hold is an excursion: the way out is not shown.
    if (from && from->t < hold_.period->second - kSampleSlack_s) from.reset();
    return {from, cold_};
  }

  /// `ends` moved to crossings that last.
  [[nodiscard]] Ends lasting(const Ends& ends, double brief_s) const {
    Ends moved = ends;
    const Crossings hot(trace_, hot_c_);
    if (heats_) {
      if (at_above_)
        moved.from = Crossings(trace_, stage_.above->celsius()).first_that_stays(*ends.from, brief_s);
      moved.to = hot.next_that_stays(*ends.to, brief_s, hold_.continuous->first);
    } else {
      moved.from = hot.first_that_stays(*ends.from, brief_s);
      if (at_above_)
        moved.to =
            Crossings(trace_, stage_.above->celsius()).next_that_stays(*ends.to, brief_s, when_.time.second);
    }
    if (moved.from && (at_above_ || !heats_)) move(*moved.from, Outward::earlier);
    if (moved.to && (at_above_ || heats_)) move(*moved.to, Outward::later);
    return moved;
  }

  [[nodiscard]] std::optional<MeanRate> mean(const Ends& ends) const {
    if (!ends.from || !ends.to || ends.to->t <= ends.from->t) return std::nullopt;
    if (trace_.take_over_s && *trace_.take_over_s > ends.from->t && *trace_.take_over_s < ends.to->t)
      return std::nullopt;
    MeanRate mean;
    mean.from_s = ends.from->t;
    mean.to_s = ends.to->t;
    mean.hottest_c = std::max(ends.from->c, ends.to->c);
    mean.rate_c_per_h =
        (heats_ ? 1.0 : -1.0) * (ends.to->c - ends.from->c) / (mean.to_s - mean.from_s) * 3600.0;
    return mean;
  }

 private:
  void move(Point& crossing, Outward outward) const {
    crossing.t = crossing_without_spike(trace_, crossing.t, crossing.c, outward);
  }

  const Trace& trace_;
  const StageTime& when_;
  const RampStage& stage_;
  bool heats_;
  const HoldCourse& hold_;
  double hot_c_;           ///< the hold's end of the ramp
  bool at_above_ = false;  ///< its other end is a crossing of `above`
  std::optional<Point> cold_;
};

}  // namespace

std::vector<OverallRate> overall_rates(const TraceSet& set, Group group, const StageTime& when,
                                       const RampStage& stage, double brief_s) {
  const bool heats = stage.direction == RampStage::Direction::heat;
  const bool beside_hold = (heats ? when.hold_after : when.hold_before) != nullptr;
  std::vector<OverallRate> rates;
  for (const std::size_t index : group) {
    OverallRate rate;
    rate.trace = index;
    if (beside_hold) {
      Ramp ramp(set.traces[index], when, stage);
      const Ends ends = ramp.ends();
      rate.mean = ramp.mean(ends);
      if (rate.mean) rate.lasting = ramp.mean(ramp.lasting(ends, brief_s));
    }
    rates.push_back(rate);
  }
  return rates;
}

double brief_crossing_s(double in_range_min_s, double interval_s) {
  constexpr double kSpikeIntervals = 4.0;  // three readings, and the lines to the next on either side
  return std::max(in_range_min_s, kSpikeIntervals * interval_s);
}

double overall_noise(const MeanRate& mean, double noise_k) {
  return kSureStandardErrors * std::sqrt(2.0) * noise_k / (mean.to_s - mean.from_s) * 3600.0;
}

}  // namespace soakwright
