#include "core/measure/tempering.h"

#include <algorithm>
#include <cmath>

namespace soakwright {
namespace {

constexpr double kZeroCelsius_k = 273.15;
constexpr double kConstant = 20.0;

/// What is gathered so far, as P; hours are kept as logarithms, which no temperature overflows.
class Gathered {
 public:
  void add(double celsius, double seconds) {
    const double kelvin = celsius + kZeroCelsius_k;
    if (kelvin <= 0.0 || seconds <= 0.0) return;
    const double step = std::log10(seconds / 3600.0);
    double hours = step;
    if (any_) {
      const double before = parameter_ * 1000.0 / kelvin - kConstant;
      const double larger = std::max(before, step);
      const double smaller = std::min(before, step);
      hours = larger + std::log1p(std::pow(10.0, smaller - larger)) / std::log(10.0);
    }
    parameter_ = kelvin * (kConstant + hours) / 1000.0;
    any_ = true;
  }
  [[nodiscard]] std::optional<double> parameter() const {
    return any_ ? std::optional<double>{parameter_} : std::nullopt;
  }

 private:
  double parameter_ = 0.0;
  bool any_ = false;
};

}  // namespace

std::optional<Tempering> tempering_of(const Trace& trace, Span record) {
  Gathered gathered;
  for (const Piece& piece : trace.pieces) {
    const Leg& leg = trace.legs[piece.leg];
    for (std::size_t i = piece.lead; i + 1 < piece.trail; ++i) {
      const double from = std::max(leg.t[i], piece.from);
      const double to = std::min(leg.t[i + 1], piece.to);
      if (to <= from) continue;
      gathered.add((on_line(leg, i, from) + on_line(leg, i, to)) / 2.0, to - from);
    }
  }
  const auto parameter = gathered.parameter();
  if (!parameter) return std::nullopt;
  Tempering tempering{*parameter, 0.0};
  for (const Span& span : unknown_spans(trace, record.first, record.second))
    tempering.unknown_s += span.second - span.first;
  return tempering;
}

double equivalent_hours(double parameter, double celsius) {
  return std::pow(10.0, parameter * 1000.0 / (celsius + kZeroCelsius_k) - kConstant);
}

}  // namespace soakwright
