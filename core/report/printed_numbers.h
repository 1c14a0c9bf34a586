// Numbers and times as a person reads them: in the unit of the report, with no more digits than the log bears
// out, and never rounded so far that a printed value contradicts its verdict.
#pragma once

#include <optional>
#include <string>

#include "core/evaluate/requirement.h"
#include "core/record/record.h"
#include "core/units/temperature.h"

namespace soakwright {

/// A limit, what was measured against it and the margin, with digits enough to tell them apart.
struct MeasuredText {
  std::string limit, measured, margin, uncertainty;
};

class PrintedNumbers {
 public:
  PrintedNumbers(TemperatureUnit unit, const Record& record);

  [[nodiscard]] TemperatureUnit unit() const { return unit_; }
  [[nodiscard]] const char* degree() const { return unit_ == TemperatureUnit::fahrenheit ? "°F" : "°C"; }
  [[nodiscard]] bool clock() const { return record_->start.has_value(); }

  /// A limit as it was asked: at most two decimals, none that are zero.
  [[nodiscard]] std::string asked_temperature(double celsius) const;
  [[nodiscard]] std::string asked_difference(double kelvin) const;
  [[nodiscard]] std::string asked_rate(double celsius_per_hour) const;
  /// "590 to 620 °C", "at least 590 °C".
  [[nodiscard]] std::string range(double low_c, std::optional<double> high_c) const;

  /// A reading: the log's digits, one more where it does not fit them. The unit stands behind it.
  [[nodiscard]] std::string temperature(double celsius) const;
  /// The same as a bare number, for a column that names its unit; `more` digits than the log's.
  [[nodiscard]] std::string bare_temperature(double celsius, int more) const;
  [[nodiscard]] std::string difference(double kelvin) const;
  [[nodiscard]] std::string rate(double celsius_per_hour) const;
  [[nodiscard]] std::string bare_rate(double celsius_per_hour) const;

  /// "2031-04-02 13:10:05", or "3:10:05" from the first sample where the log has no clock.
  [[nodiscard]] std::string moment(double at_s) const;
  /// "2031-04-02 13:10:05 to 13:25:05"
  [[nodiscard]] std::string span(double from_s, double to_s) const;
  /// The moment where there is one, else the span, else nothing.
  [[nodiscard]] std::string when(std::optional<double> at_s, std::optional<double> from_s,
                                 std::optional<double> to_s) const;
  /// As when(), for a narrow column: "13:10:05 to 13:25:05", the day before it ("2 Apr 13:10:05") where the
  /// record does not lie on one.
  [[nodiscard]] std::string brief_when(std::optional<double> at_s, std::optional<double> from_s,
                                       std::optional<double> to_s) const;

  [[nodiscard]] MeasuredText measured(const Requirement& requirement) const;
  /// One value in the unit of a requirement; `digits` more than usual.
  [[nodiscard]] std::string value(QuantityUnit quantity, double value, int digits = 0) const;

 private:
  [[nodiscard]] std::string brief_moment(double at_s) const;
  [[nodiscard]] double printed(QuantityUnit quantity, bool is_difference, double value) const;
  [[nodiscard]] int usual_digits(QuantityUnit quantity) const;

  TemperatureUnit unit_;
  const Record* record_;
  int log_digits_ = 1;  ///< of the evaluated channels, in the unit of the report
  int time_digits_ = 0;
};

/// "1 h 35 min 12 s"; `digits` behind the point of the second.
std::string rounded_duration(double seconds, int digits = 0);
/// A number with `digits` decimals and a true minus sign; never "−0".
std::string decimal_text(double value, int digits);
/// At most `digits` decimals, none that are zero.
std::string short_text(double value, int digits);
/// "1 234 567"
std::string count_text(std::uint64_t count);
/// "38 mm"
std::string thickness_text(double millimetres);
std::string date_text(CivilDate date);
/// "a, b and c"
std::string listing(const std::vector<std::string>& names);

}  // namespace soakwright
