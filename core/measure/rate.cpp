#include "core/measure/rate.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

#include "core/measure/reading_noise.h"
#include "core/system/parallel_for.h"

namespace soakwright {
namespace {

constexpr double kFewestIntervals = 8.0;
constexpr double kInfinite = std::numeric_limits<double>::infinity();

/// A known time of one channel within the stage, at or above `above` and at or below `below`.
struct Part {
  Span time;
  std::size_t piece = 0;
  std::size_t first = 0, end = 0;  ///< samples
  bool full_crossing = false;      ///< runs from `above` to `below` or back
};

std::vector<Part> parts_of(const Trace& trace, const Span& when, const RampStage& stage) {
  std::vector<Part> parts;
  const double low = stage.above ? stage.above->celsius() : -kInfinite;
  const double high = stage.below ? stage.below->celsius() : kInfinite;
  const std::vector<RangeSpan> spans = range_spans(trace, low, high);
  for (std::size_t i = 0; i < spans.size(); ++i) {
    if (spans[i].state != RangeState::in) continue;
    Part part;
    part.time = {std::max(spans[i].from, when.first), std::min(spans[i].to, when.second)};
    if (part.time.second <= part.time.first) continue;
    part.piece = spans[i].piece;
    const Piece& piece = trace.pieces[part.piece];
    std::tie(part.first, part.end) =
        samples_within(trace.sources[piece.source], piece, part.time.first, part.time.second);
    const auto beside = [&](std::size_t other, double edge, double own_edge) -> std::optional<RangeState> {
      if (other >= spans.size() || spans[other].piece != part.piece || edge != own_edge) return std::nullopt;
      return spans[other].state;
    };
    const auto before = i > 0 ? beside(i - 1, spans[i].from, part.time.first) : std::nullopt;
    const auto after = beside(i + 1, spans[i].to, part.time.second);
    part.full_crossing = before && after && *before != *after;
    parts.push_back(part);
  }
  return parts;
}

struct TraceRate {
  std::optional<MeasuredRate> worst;
  std::vector<SteepPlace> places;
  std::array<AlternativeRate, 4> by_window{};
  bool crossed_unseen = false;
  double noise_k = 0.0;
  bool has_parts = false;
};

/// Evaluates slopes of one channel: what noise and uncertainty leave of them against the limit.
class SlopeScale {
 public:
  SlopeScale() = default;
  SlopeScale(double noise_k, double tick_s, double rate_share, bool guarded)
      : noise_k_(noise_k), tick_s_(tick_s), rate_share_(rate_share), guarded_(guarded) {}

  /// What a window of this shape is held against the limit with.
  [[nodiscard]] double held(double slope, const WindowShape& shape) {
    if (!guarded_) return slope;
    return slope + kSureStandardErrors * standard_error(shape) + rate_share_ * std::fabs(slope);
  }
  /// Only slopes above this can be held with more than `held`.
  [[nodiscard]] double slope_held_with(double held, const WindowShape& shape) {
    if (!guarded_ || std::isinf(held)) return held;
    constexpr double kRounding = 1e-9;
    const double left = held - kSureStandardErrors * standard_error(shape);
    const double slope = left / (left >= 0.0 ? 1.0 + rate_share_ : 1.0 - rate_share_);
    return slope - kRounding * (1.0 + std::fabs(slope));
  }
  [[nodiscard]] double at_least(double slope, const WindowShape& shape) {
    return slope - kSureStandardErrors * standard_error(shape) - rate_share_ * std::fabs(slope);
  }
  [[nodiscard]] MeasuredRate measured(std::size_t trace, const WindowSlope& window) const {
    MeasuredRate rate{trace, window, noise_k_ / window.root_sxx_h, 0.0, window.slope_c_per_h};
    if (!guarded_) return rate;
    rate.uncertainty = rate_share_ * std::fabs(window.slope_c_per_h);
    rate.held += kSureStandardErrors * rate.standard_error + rate.uncertainty;
    return rate;
  }
  [[nodiscard]] double at_least(const MeasuredRate& rate) const {
    return rate.window.slope_c_per_h - kSureStandardErrors * rate.standard_error - rate.uncertainty;
  }

 private:
  /// Most windows have the shape of the one before.
  double standard_error(const WindowShape& shape) {
    if (shape.denominator != denominator_ || shape.samples != samples_) {
      denominator_ = shape.denominator;
      samples_ = shape.samples;
      standard_error_ = noise_k_ / (std::sqrt(denominator_ / samples_) * tick_s_ / 3600.0);
    }
    return standard_error_;
  }

  double noise_k_ = 0.0;
  double tick_s_ = 1.0;
  double rate_share_ = 0.0;
  bool guarded_ = false;
  double denominator_ = 0.0, samples_ = 0.0, standard_error_ = 0.0;
};

/// Measures one channel.
class TraceRateMeter {
 public:
  TraceRateMeter(const Record& record, const RowTicks& rows, const Trace& trace, std::size_t index,
                 double sign, std::optional<double> limit, const Guard* guard)
      : record_(record),
        rows_(rows),
        trace_(trace),
        index_(index),
        sign_(sign),
        edge_(limit ? *limit + kTemperatureSlack : kInfinite),
        guard_(guard) {
    watch_above_.fill(edge_);
    steepest_.fill(-kInfinite);
  }

  TraceRate measure(const Span& when, const RampStage& stage, double width_s) {
    const std::vector<Part> parts = parts_of(trace_, when, stage);
    rate_.has_parts = !parts.empty();
    load(parts);
    ReadingNoise noise;
    double last_digit = 0.0;
    for (const Part& part : parts) {
      noise.add(samples_of(part), part.first, part.end);
      last_digit = std::max(last_digit, record_.channels[source_of(part).channel].readings.resolution_k());
    }
    rate_.noise_k = noise.standard_deviation(last_digit);
    for (const Part& part : parts) measure_part(part, width_s);
    return std::move(rate_);
  }

 private:
  const TraceSource& source_of(const Part& part) const {
    return trace_.sources[trace_.pieces[part.piece].source];
  }
  const IntegerSamples& samples_of(const Part& part) const {
    return samples_[trace_.pieces[part.piece].source];
  }

  /// Integers of the samples that the parts need, per source.
  void load(const std::vector<Part>& parts) {
    samples_.resize(trace_.sources.size());
    for (std::size_t source = 0; source < trace_.sources.size(); ++source) {
      std::size_t first = std::numeric_limits<std::size_t>::max();
      std::size_t end = 0;
      for (const Part& part : parts) {
        if (trace_.pieces[part.piece].source != source || part.first >= part.end) continue;
        first = std::min(first, part.first);
        end = std::max(end, part.end);
      }
      if (first < end) samples_[source] = integer_samples(record_, rows_, trace_.sources[source], first, end);
    }
  }

  void measure_part(const Part& part, double width_s) {
    const TraceSource& source = source_of(part);
    const IntegerSamples& samples = samples_of(part);
    const double share =
        guard_ != nullptr ? guard_->of(trace_, trace_.pieces[part.piece].source).rate_share() : 0.0;
    scale_ = SlopeScale(rate_.noise_k, samples.tick_s, share, guard_ != nullptr);
    AlternativeRate* same = nullptr;
    for (std::size_t i = 0; i < kAlternativeMinutes.size(); ++i)
      if (kAlternativeMinutes[i] * 60.0 == width_s) same = &rate_.by_window[i];
    const bool any = visit_windows(
        source, samples, part.first, part.end, part.time, width_s, sign_,
        [&](const WindowShape& shape) {
          const double above = scale_.slope_held_with(take_above_, shape);
          return same != nullptr ? std::min(above, alternatives_interest(*same, shape)) : above;
        },
        [&](std::size_t sample, double slope, const WindowShape& shape) {
          const auto measured = [&] {
            return scale_.measured(index_, window_about(source, samples, sample, width_s, slope, shape));
          };
          if (scale_.held(slope, shape) > take_above_) take(measured());
          if (same != nullptr) note_alternatives(*same, slope, shape, measured);
        });
    if (!any) {
      if (auto window = slope_over(samples, part.first, part.end, part.time)) {
        window->slope_c_per_h *= sign_;
        const MeasuredRate measured = scale_.measured(index_, *window);
        if (measured.held > take_above_) take(measured);
      } else if (part.full_crossing) {
        rate_.crossed_unseen = true;
      }
    }
    for (std::size_t i = 0; i < kAlternativeMinutes.size(); ++i) {
      AlternativeRate& alternatives = rate_.by_window[i];
      const double alternatives_s = kAlternativeMinutes[i] * 60.0;
      if (&alternatives == same) continue;
      visit_windows(
          source, samples, part.first, part.end, part.time, alternatives_s, sign_,
          [&](const WindowShape& shape) { return alternatives_interest(alternatives, shape); },
          [&](std::size_t sample, double slope, const WindowShape& shape) {
            note_alternatives(alternatives, slope, shape, [&] {
              return scale_.measured(index_,
                                     window_about(source, samples, sample, alternatives_s, slope, shape));
            });
          });
    }
  }

  /// What note_alternatives() does nothing with lies below.
  double alternatives_interest(const AlternativeRate& alternatives, const WindowShape& shape) {
    const std::size_t i = static_cast<std::size_t>(&alternatives - rate_.by_window.data());
    return std::min(steepest_[i], scale_.slope_held_with(watch_above_[i], shape));
  }

  /// The worst over windows of one width, and whether any is beyond the limit.
  template <typename Measured>
  void note_alternatives(AlternativeRate& alternatives, double slope, const WindowShape& shape,
                         const Measured& measured) {
    const double held = scale_.held(slope, shape);
    const std::size_t i = static_cast<std::size_t>(&alternatives - rate_.by_window.data());
    if (held <= watch_above_[i] && slope <= steepest_[i]) return;
    if (held > edge_) {
      alternatives.doubtful = true;
      alternatives.surely = alternatives.surely || scale_.at_least(slope, shape) > edge_;
      if (alternatives.surely) watch_above_[i] = kInfinite;
    }
    if (slope <= steepest_[i]) return;
    steepest_[i] = slope;
    alternatives.worst = measured();
  }

  /// A window held higher than all before it, or beyond the limit.
  void take(const MeasuredRate& measured) {
    const WindowSlope& window = measured.window;
    if (!rate_.worst || measured.held > rate_.worst->held) rate_.worst = measured;
    take_above_ = std::min(rate_.worst->held, edge_);
    if (measured.held <= edge_) return;
    const bool surely = scale_.at_least(measured) > edge_;
    SteepPlace* last = rate_.places.empty() ? nullptr : &rate_.places.back();
    if (last != nullptr && window.from_s <= last->time.second) {
      last->time.second = window.to_s;
      last->surely = last->surely || surely;
      if (measured.held > last->steepest.held) last->steepest = measured;
    } else {
      rate_.places.push_back({index_, {window.from_s, window.to_s}, measured, surely});
    }
  }

  const Record& record_;
  const RowTicks& rows_;
  const Trace& trace_;
  std::size_t index_;
  double sign_;
  double edge_;
  const Guard* guard_;
  SlopeScale scale_;
  std::vector<IntegerSamples> samples_;
  TraceRate rate_;
  double take_above_ = -kInfinite;                    ///< windows held with up to this change nothing
  std::array<double, 4> watch_above_{}, steepest_{};  ///< the same for each other width
};

bool worse(const MeasuredRate& a, const MeasuredRate& b) {
  if (a.held != b.held) return a.held > b.held;
  return a.window.at_s < b.window.at_s;
}

}  // namespace

StageRate stage_rate(const Record& record, const RowTicks& rows, const TraceSet& set, Group group,
                     const StageTime& when, const RampStage& stage, double rate_window_s,
                     std::optional<double> limit_c_per_h, const Guard* guard) {
  StageRate result;
  result.width_s = rate_window_s;
  if (kFewestIntervals * record.interval_s > rate_window_s) {
    result.width_s = kFewestIntervals * record.interval_s;
    result.widened = true;
  }
  const double sign = stage.direction == RampStage::Direction::heat ? 1.0 : -1.0;
  std::vector<TraceRate> rates(group.size());
  parallel_for(group.size(), [&](std::size_t member) {
    const std::size_t index = group[member];
    rates[member] = TraceRateMeter(record, rows, set.traces[index], index, sign, limit_c_per_h, guard)
                        .measure(when.time, stage, result.width_s);
  });
  for (std::size_t member = 0; member < group.size(); ++member) {
    const TraceRate& rate = rates[member];
    if (rate.worst && (!result.worst || worse(*rate.worst, *result.worst))) result.worst = rate.worst;
    result.places.insert(result.places.end(), rate.places.begin(), rate.places.end());
    if (rate.crossed_unseen) result.crossed_unseen.push_back(group[member]);
    for (std::size_t i = 0; i < kAlternativeMinutes.size(); ++i) {
      const AlternativeRate& own = rate.by_window[i];
      AlternativeRate& all = result.by_window[i];
      if (own.worst && (!all.worst || own.worst->window.slope_c_per_h > all.worst->window.slope_c_per_h))
        all.worst = own.worst;
      all.surely = all.surely || own.surely;
      all.doubtful = all.doubtful || own.doubtful;
    }
    if (rate.has_parts) result.noise_k.emplace_back(group[member], rate.noise_k);
  }
  return result;
}

}  // namespace soakwright
