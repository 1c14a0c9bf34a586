// SPDX-License-Identifier: GPL-3.0-or-later
// Numbers and times as this report prints them: in its unit, with no more digits than the log bears out, and
// never rounded so far that a printed value contradicts its verdict.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/evaluate/requirement.h"
#include "core/record/record.h"
#include "core/units/printed_quantity.h"
#include "core/units/temperature.h"

namespace soakwright {

/// A limit, what was measured against it and the margin, with digits enough to tell them apart.
struct MeasuredText {
  std::string limit;  ///< "≤ 144.7 °C/h"
  std::string measured, margin, uncertainty;
};

class PrintedNumbers {
 public:
  PrintedNumbers(TemperatureUnit unit, const Record& record);

  [[nodiscard]] TemperatureUnit unit() const { return format_.unit; }
  [[nodiscard]] std::string degree() const { return degree_text(format_.unit); }
  /// The recorder showed dates.
  [[nodiscard]] bool dated() const { return record_->clock.kind() == RecorderClock::Kind::dated; }

  /// What was measured: "611.6 °C", "1 h 35 min".
  [[nodiscard]] std::string text(const Quantity& quantity) const { return printed(quantity, format_); }
  /// What was specified: "590 °C".
  [[nodiscard]] std::string limit(const Quantity& quantity) const { return printed_limit(quantity, format_); }
  /// A time as it was specified.
  [[nodiscard]] std::string duration_limit(double seconds) const {
    return limit(Duration::of_seconds(seconds));
  }
  /// With `digits` decimals, and no unit: for a column that names it.
  [[nodiscard]] std::string bare(const Quantity& quantity, int digits) const {
    return printed_number(quantity, format_, digits);
  }
  /// "590 to 620 °C", "at least 590 °C".
  [[nodiscard]] std::string range(Temperature low, std::optional<Temperature> high) const;

  // Measured values as the core keeps them: °C, °C of difference, °C/h, s.
  [[nodiscard]] std::string temperature(double celsius) const {
    return text(Temperature::of_celsius(celsius));
  }
  [[nodiscard]] std::string difference(double kelvin) const {
    return text(TemperatureDifference::of_kelvin(kelvin));
  }
  [[nodiscard]] std::string rate(double celsius_per_hour) const {
    return text(HeatingRate::of_celsius_per_hour(celsius_per_hour));
  }
  [[nodiscard]] std::string duration(double seconds) const { return text(Duration::of_seconds(seconds)); }
  /// The same as a bare number, for a column that names its unit; `more` digits than the log's.
  [[nodiscard]] std::string bare_temperature(double celsius, int more) const;
  [[nodiscard]] std::string bare_rate(double celsius_per_hour) const;

  /// As the recorder showed it: "2031-04-02 13:10:05", "13:10:05", "3:10:05".
  [[nodiscard]] std::string moment(double at_s) const;
  /// The same with as many digits as its stamp has.
  [[nodiscard]] std::string stamp(double at_s) const {
    return record_->moment_text(at_s, RecorderClock::kAsNeeded);
  }
  /// "2031-04-02 13:10:05 to 13:25:05"
  [[nodiscard]] std::string span(double from_s, double to_s) const;
  /// The moment where there is one, else the span, else nothing.
  [[nodiscard]] std::string when(std::optional<double> at_s, std::optional<double> from_s,
                                 std::optional<double> to_s) const;
  /// As when(), for a narrow column: "13:10:05 to 13:25:05", the day before it ("2 Apr 13:10:05") where the
  /// record covers more than one.
  [[nodiscard]] std::string brief_when(std::optional<double> at_s, std::optional<double> from_s,
                                       std::optional<double> to_s) const;

  [[nodiscard]] MeasuredText measured(const Requirement& requirement) const;
  /// A standard error, with one digit more than the value it belongs to.
  [[nodiscard]] std::string standard_error(const Requirement& requirement) const;

 private:
  [[nodiscard]] std::string brief_moment(double at_s) const;

  QuantityFormat format_;
  const Record* record_;
};

/// "a, b and c"
std::string listing(const std::vector<std::string>& names);

}  // namespace soakwright
