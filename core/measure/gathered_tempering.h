// SPDX-License-Identifier: GPL-3.0-or-later
// The tempering parameter while it is carried along a curve (tempering.h), for one trace or several.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>

namespace soakwright {

inline constexpr double kZeroCelsius_k = 273.15;
/// C of the formula for C-Mn and Cr-Mo steels, as in EN 13445-4:2021; a procedure may give another.
inline constexpr double kTemperingConstant = 20.0;

/// What is gathered so far, as P in kelvin and natural logarithms: T (C ln 10 + ln t). A step at equal P
/// adds T ln(1 + step / what is gathered, in hours at T).
class GatheredTempering {
 public:
  GatheredTempering() : GatheredTempering(kTemperingConstant) {}
  explicit GatheredTempering(double constant);
  /// A step at its mean temperature.
  void add(double celsius, double seconds);
  /// In thousands, with the logarithm to base ten; nullopt if nothing was gathered.
  [[nodiscard]] std::optional<double> parameter() const;

 private:
  friend class GatheredLanes;

  double parameter_ = 0.0;
  double seconds_ = 0.0;
  double log_constant_;    ///< C ln 10
  double log_step_ = 0.0;  ///< C ln 10 + ln of the step in hours
  bool any_ = false;
};

/// Traces with readings at the same times, one in each lane: each step waits for the logarithm of the one
/// before, and a processor carries the other lanes along meanwhile.
inline constexpr std::size_t kTemperingLanes = 12;

/// What `celsius` (a column of readings for each lane, as long as `times_s`) gathers; the same to the bit on
/// processors with wide vectors and without.
std::array<GatheredTempering, kTemperingLanes> gather_lanes(
    std::span<const double> times_s, const std::array<const double*, kTemperingLanes>& celsius,
    double constant);

}  // namespace soakwright
