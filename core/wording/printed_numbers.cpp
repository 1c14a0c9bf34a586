// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/printed_numbers.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace soakwright {
namespace {

constexpr std::size_t kDateLength = 11;  // "2031-04-02 "
constexpr const char* kMonths[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                   "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
constexpr int kMostPrintedDigits = 6;
constexpr double kSame = 1e-6;  // the slack of the verdicts: what differs by less is at the limit

double rounded(double value, int digits) {
  const double scale = std::pow(10.0, digits);
  return std::round(value * scale) / scale;
}

}  // namespace

std::string listing(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) text += i + 1 == names.size() ? " and " : ", ";
    text += names[i];
  }
  return text;
}

PrintedNumbers::PrintedNumbers(TemperatureUnit unit, const Record& record)
    : format_{unit, 1, 0}, record_(&record) {
  double finest_k = 0.0;
  for (const Channel& channel : record.channels) {
    const double step_k = channel.readings.resolution_k();
    if (channel.evaluated() && step_k > 0.0 && (finest_k == 0.0 || step_k < finest_k)) finest_k = step_k;
  }
  if (finest_k > 0.0) {
    const double step = TemperatureDifference::of_kelvin(finest_k).in(unit);
    format_.temperature_digits = std::clamp(static_cast<int>(std::ceil(-std::log10(step) - 1e-9)), 0, 2);
  }
  if (record.interval_s > 0.0 && record.interval_s < 1.0)
    format_.second_digits = record.interval_s < 0.1 ? 2 : 1;
}

std::string PrintedNumbers::range(Temperature low, std::optional<Temperature> high) const {
  if (!high) return fmt::format("at least {}", limit(low));
  return short_text(low.in(format_.unit), 2) + " to " + limit(*high);
}

std::string PrintedNumbers::bare_temperature(double celsius, int more) const {
  return bare(Temperature::of_celsius(celsius), format_.temperature_digits + more);
}

std::string PrintedNumbers::bare_rate(double celsius_per_hour) const {
  return bare(HeatingRate::of_celsius_per_hour(celsius_per_hour), 1);
}

std::string PrintedNumbers::moment(double at_s) const {
  return record_->moment_text(at_s, format_.second_digits);
}

std::string PrintedNumbers::span(double from_s, double to_s) const {
  const std::string from = moment(from_s);
  std::string to = moment(to_s);
  if (dated() && from.compare(0, kDateLength, to, 0, kDateLength) == 0) to.erase(0, kDateLength);
  return from + " to " + to;
}

std::string PrintedNumbers::when(std::optional<double> at_s, std::optional<double> from_s,
                                 std::optional<double> to_s) const {
  if (at_s) return moment(*at_s);
  if (from_s && to_s && *to_s > *from_s) return span(*from_s, *to_s);
  if (from_s) return moment(*from_s);
  if (to_s) return moment(*to_s);
  return {};
}

std::string PrintedNumbers::brief_moment(double at_s) const {
  const auto local = record_->local_time(at_s);
  if (!local) return moment(at_s);
  const std::string time = record_->clock.parts(at_s, format_.second_digits).time;
  if (record_->local_time(record_->begin_s())->date() == record_->local_time(record_->end_s())->date())
    return time;
  return fmt::format("{} {} {}", local->date().day, kMonths[local->date().month - 1], time);
}

std::string PrintedNumbers::brief_when(std::optional<double> at_s, std::optional<double> from_s,
                                       std::optional<double> to_s) const {
  if (at_s) return brief_moment(*at_s);
  if (from_s && to_s && *to_s > *from_s) {
    const std::string from = brief_moment(*from_s);
    std::string to = brief_moment(*to_s);
    const std::size_t day = from.rfind(' ');
    if (dated() && day != std::string::npos && from.compare(0, day, to, 0, day) == 0) to.erase(0, day + 1);
    return from + " to " + to;
  }
  if (from_s) return brief_moment(*from_s);
  if (to_s) return brief_moment(*to_s);
  return {};
}

std::string PrintedNumbers::standard_error(const Requirement& requirement) const {
  if (!requirement.standard_error) return {};
  const Quantity error = quantity_of(difference_kind(requirement.quantity()), *requirement.standard_error);
  return printed_with(error, format_, usual_digits(error, format_) + 1);
}

MeasuredText PrintedNumbers::measured(const Requirement& requirement) const {
  const QuantityKind kind = requirement.quantity();
  const Quantity limit = quantity_of(kind, requirement.limit);
  const auto left = [&](double value) { return quantity_of(difference_kind(kind), value); };
  const double printed_limit_value = in_unit(limit, format_.unit);

  int digits = usual_digits(requirement.measured ? quantity_of(kind, *requirement.measured) : limit, format_);
  if (requirement.measured) {
    const double value = in_unit(quantity_of(kind, *requirement.measured), format_.unit);
    const bool apart = std::fabs(*requirement.measured - requirement.limit) > kSame;
    while (apart && digits < kMostPrintedDigits &&
           rounded(value, digits) == rounded(printed_limit_value, digits))
      ++digits;
  }
  if (requirement.margin && std::fabs(*requirement.margin) > kSame) {
    const double margin = in_unit(left(*requirement.margin), format_.unit);
    while (digits < kMostPrintedDigits && rounded(margin, digits) == 0.0) ++digits;
  }

  MeasuredText text;
  text.limit = requirement.limit_is_least() ? "≥ " : "≤ ";
  text.limit += printed_limit(limit, format_, std::max(digits, 2));
  if (requirement.measured)
    text.measured = printed_with(quantity_of(kind, *requirement.measured), format_, digits);
  if (requirement.margin) text.margin = printed_with(left(*requirement.margin), format_, digits);
  if (requirement.uncertainty)
    text.uncertainty = printed_with(left(*requirement.uncertainty), format_, digits);
  return text;
}

}  // namespace soakwright
