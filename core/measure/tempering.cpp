#include "core/measure/tempering.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/measure/side_by_side.h"

namespace soakwright {
namespace {

constexpr double kZeroCelsius_k = 273.15;
constexpr double kConstant = 20.0;

constexpr double kSmall = 0.01;
/// Shares of e to the minus this change nothing in a double.
constexpr double kNothing = 38.0;
constexpr double kThird = 1.0 / 3, kFifth = 1.0 / 5, kSixth = 1.0 / 6, kSeventh = 1.0 / 7;

/// ln(1 + q) for q from 0 up to kSmall, to 1e-14: the series in pairs, so that few of its terms wait for
/// others.
double small_log1p(double q) {
  const double qq = q * q;
  const double odd = (1.0 + qq * (kThird + qq * (kFifth + qq * kSeventh)));
  const double even = 0.5 + qq * (0.25 + qq * kSixth);
  return q * odd - qq * even;
}

/// What is gathered so far, as P in kelvin and natural logarithms: T (20 ln 10 + ln t). A step at equal P
/// adds T ln(1 + step / what is gathered, in hours at T).
class Gathered {
 public:
  void add(double celsius, double seconds) {
    const double kelvin = celsius + kZeroCelsius_k;
    if (kelvin <= 0.0 || seconds <= 0.0) return;
    if (seconds != seconds_) {
      seconds_ = seconds;
      log_step_ = kLogConstant + std::log(seconds / 3600.0);
    }
    if (parameter_ > kelvin * (log_step_ + kNothing)) return;
    const double apart = log_step_ - parameter_ / kelvin;
    if (!any_ || apart > kNothing) {
      parameter_ = kelvin * log_step_;
      any_ = true;
      return;
    }
    const double share = std::exp(apart);
    parameter_ += kelvin * (share <= kSmall ? small_log1p(share) : std::log1p(share));
  }
  [[nodiscard]] std::optional<double> parameter() const {
    if (!any_) return std::nullopt;
    return parameter_ / kLn10 / 1000.0;
  }

 private:
  static constexpr double kLn10 = 2.302585092994045684;
  static constexpr double kLogConstant = kConstant * kLn10;

  double parameter_ = 0.0;
  double seconds_ = 0.0;
  double log_step_ = 0.0;  ///< 20 ln 10 + ln of the step in hours
  bool any_ = false;
};

/// The known steps of a trace, one after the other.
class Steps {
 public:
  explicit Steps(const Trace& trace) : trace_(trace) { enter(0); }

  struct Step {
    double celsius, seconds;  ///< the mean of its two ends
    double to_s;
    std::size_t leg;
  };
  /// False at the end.
  bool next(Step& step) {
    while (piece_ < trace_.pieces.size()) {
      const Piece& piece = trace_.pieces[piece_];
      const Leg& leg = trace_.legs[piece.leg];
      for (; sample_ + 1 < piece.trail;) {
        const std::size_t i = sample_++;
        const double from = std::max(leg.t[i], piece.from);
        const double to = std::min(leg.t[i + 1], piece.to);
        if (to <= from) continue;
        const bool whole = from == leg.t[i] && to == leg.t[i + 1];
        step = {whole ? (leg.c[i] + leg.c[i + 1]) / 2.0 : (on_line(leg, i, from) + on_line(leg, i, to)) / 2.0,
                to - from, to, piece.leg};
        return true;
      }
      enter(piece_ + 1);
    }
    return false;
  }

 private:
  void enter(std::size_t piece) {
    piece_ = piece;
    if (piece < trace_.pieces.size()) sample_ = trace_.pieces[piece].lead;
  }

  const Trace& trace_;
  std::size_t piece_ = 0;
  std::size_t sample_ = 0;
};

std::optional<Tempering> tempering_with(const Gathered& gathered, const Trace& trace, Span record) {
  const auto parameter = gathered.parameter();
  if (!parameter) return std::nullopt;
  Tempering tempering{*parameter, 0.0};
  for (const Span& span : unknown_spans(trace, record.first, record.second))
    tempering.unknown_s += span.second - span.first;
  return tempering;
}

Gathered gathered_over(const Trace& trace) {
  Gathered gathered;
  Steps steps(trace);
  for (Steps::Step step{}; steps.next(step);) gathered.add(step.celsius, step.seconds);
  return gathered;
}

/// Traces that are known throughout, at the same times, are carried along four at a time: each step waits for
/// the logarithm of the one before, and a processor works on the others meanwhile.
constexpr std::size_t kAtOnce = 4;

/// Whether lines through all its readings, and no others, make the trace.
bool known_throughout(const Trace& trace) {
  if (trace.legs.size() != 1 || trace.pieces.size() != 1) return false;
  const Leg& leg = trace.legs.front();
  const Piece& piece = trace.pieces.front();
  return leg.own_t.empty() && piece.lead == 0 && piece.trail == leg.c.size() && piece.from == leg.t.front() &&
         piece.to == leg.t.back();
}

std::array<Gathered, kAtOnce> gathered_at_once(const Trace* traces) {
  std::array<Gathered, kAtOnce> gathered;
  std::array<const double*, kAtOnce> c{};
  for (std::size_t k = 0; k < kAtOnce; ++k) c[k] = traces[k].legs.front().c.data();
  const std::span<const double> t = traces->legs.front().t;
  for (std::size_t i = 0; i + 1 < t.size(); ++i)
    for (std::size_t k = 0; k < kAtOnce; ++k) gathered[k].add((c[k][i] + c[k][i + 1]) / 2.0, t[i + 1] - t[i]);
  return gathered;
}

}  // namespace

std::vector<std::optional<Tempering>> temperings_of(const std::vector<Trace>& traces, Span record) {
  std::vector<std::optional<Tempering>> all(traces.size());
  side_by_side((traces.size() + kAtOnce - 1) / kAtOnce, [&](std::size_t lot) {
    const std::size_t first = lot * kAtOnce;
    const std::size_t end = std::min(first + kAtOnce, traces.size());
    const auto begin = traces.begin() + static_cast<std::ptrdiff_t>(first);
    if (end - first == kAtOnce && std::all_of(begin, begin + kAtOnce, known_throughout)) {
      const std::array<Gathered, kAtOnce> gathered = gathered_at_once(&traces[first]);
      for (std::size_t k = 0; k < kAtOnce; ++k)
        all[first + k] = tempering_with(gathered[k], traces[first + k], record);
      return;
    }
    for (std::size_t i = first; i < end; ++i)
      all[i] = tempering_with(gathered_over(traces[i]), traces[i], record);
  });
  return all;
}

std::optional<Tempering> tempering_of(const Trace& trace, Span record, const Guard& guard, double sign) {
  Gathered gathered;
  Steps steps(trace);
  for (Steps::Step step{}; steps.next(step);) {
    const double u = guard.of(trace, step.leg).expanded_k(step.celsius);
    if (!std::isfinite(u)) return std::nullopt;
    gathered.add(step.celsius + sign * u, step.seconds);
  }
  return tempering_with(gathered, trace, record);
}

std::optional<double> tempering_passes(const Trace& trace, double parameter) {
  Gathered gathered;
  Steps steps(trace);
  for (Steps::Step step{}; steps.next(step);) {
    gathered.add(step.celsius, step.seconds);
    if (gathered.parameter().value_or(0.0) > parameter) return step.to_s;
  }
  return std::nullopt;
}

double equivalent_hours(double parameter, double celsius) {
  return std::pow(10.0, parameter * 1000.0 / (celsius + kZeroCelsius_k) - kConstant);
}

}  // namespace soakwright
