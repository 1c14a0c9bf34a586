#include "core/measure/tempering.h"

#include <algorithm>
#include <cmath>

namespace soakwright {
namespace {

constexpr double kZeroCelsius_k = 273.15;
constexpr double kConstant = 20.0;

/// e^u for |u| up to kSmall, to 1e-14 of itself.
double small_exp(double u) {
  return 1.0 + u * (1.0 + u / 2.0 * (1.0 + u / 3.0 * (1.0 + u / 4.0 * (1.0 + u / 5.0 * (1.0 + u / 6.0)))));
}

/// ln(1 + q) for q from 0 up to kSmall, to 1e-14.
double small_log1p(double q) {
  return q * (1.0 - q * (1.0 / 2 - q * (1.0 / 3 - q * (1.0 / 4 - q * (1.0 / 5 - q * (1.0 / 6 - q / 7.0))))));
}

constexpr double kSmall = 0.01;
/// Shares of e to the minus this change nothing in a double.
constexpr double kNothing = 38.0;

/// What is gathered so far: hours at the temperature of the last step, and their logarithm, which no
/// temperature overflows. Steps are small beside what is gathered, so series do for most of them; the rest
/// take the long way.
class Gathered {
 public:
  void add(double celsius, double seconds) {
    const double kelvin = celsius + kZeroCelsius_k;
    if (kelvin <= 0.0 || seconds <= 0.0) return;
    const double step_h = seconds / 3600.0;
    if (!any_) {
      log_hours_ = std::log(step_h);
      hours_ = step_h;
      any_ = true;
    } else {
      const double shift = (kelvin_ / kelvin - 1.0) * (kLogConstant + log_hours_);
      log_hours_ += shift;
      if (std::fabs(shift) <= kSmall)
        hours_ *= small_exp(shift);
      else
        hours_ = std::exp(log_hours_);
      add_step(step_h);
    }
    kelvin_ = kelvin;
  }
  [[nodiscard]] std::optional<double> parameter() const {
    if (!any_) return std::nullopt;
    return kelvin_ * (kConstant + log_hours_ / kLn10) / 1000.0;
  }

 private:
  static constexpr double kLn10 = 2.302585092994045684;
  static constexpr double kLogConstant = kConstant * kLn10;

  void add_step(double step_h) {
    const double share = step_h / hours_;
    if (share >= 0.0 && share <= kSmall) {
      log_hours_ += small_log1p(share);
      hours_ += step_h;
      return;
    }
    const double log_step = std::log(step_h);
    const double larger = std::max(log_hours_, log_step);
    const double apart = std::fabs(log_hours_ - log_step);
    log_hours_ = apart > kNothing ? larger : larger + std::log1p(std::exp(-apart));
    hours_ = std::exp(log_hours_);
  }

  double kelvin_ = 0.0;
  double log_hours_ = 0.0;
  double hours_ = 0.0;
  bool any_ = false;
};

/// `shift(leg, celsius)` is added to each step's temperature.
template <typename Shift>
std::optional<Tempering> gathered_over(const Trace& trace, Span record, const Shift& shift) {
  Gathered gathered;
  for (const Piece& piece : trace.pieces) {
    const Leg& leg = trace.legs[piece.leg];
    for (std::size_t i = piece.lead; i + 1 < piece.trail; ++i) {
      const double from = std::max(leg.t[i], piece.from);
      const double to = std::min(leg.t[i + 1], piece.to);
      if (to <= from) continue;
      const double celsius = (on_line(leg, i, from) + on_line(leg, i, to)) / 2.0;
      gathered.add(celsius + shift(piece.leg, celsius), to - from);
    }
  }
  const auto parameter = gathered.parameter();
  if (!parameter) return std::nullopt;
  Tempering tempering{*parameter, 0.0};
  for (const Span& span : unknown_spans(trace, record.first, record.second))
    tempering.unknown_s += span.second - span.first;
  return tempering;
}

}  // namespace

std::optional<Tempering> tempering_of(const Trace& trace, Span record) {
  return gathered_over(trace, record, [](std::size_t, double) { return 0.0; });
}

std::optional<Tempering> tempering_of(const Trace& trace, Span record, const Guard& guard, double sign) {
  bool known = true;
  const auto tempering = gathered_over(trace, record, [&](std::size_t leg, double celsius) {
    const double u = guard.of(trace, leg).expanded_k(celsius);
    known = known && std::isfinite(u);
    return known ? sign * u : 0.0;
  });
  return known ? tempering : std::nullopt;
}

double equivalent_hours(double parameter, double celsius) {
  return std::pow(10.0, parameter * 1000.0 / (celsius + kZeroCelsius_k) - kConstant);
}

}  // namespace soakwright
