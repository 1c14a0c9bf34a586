#include "core/report/printed_numbers.h"

#include <algorithm>
#include <cmath>
#include <string_view>

#include <fmt/format.h>

namespace soakwright {
namespace {

constexpr double kFahrenheitPerKelvin = 1.8;
constexpr std::size_t kDateLength = 11;  // "2031-04-02 "
constexpr const char* kMonths[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                   "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
constexpr int kMostDigits = 6;  // the slack of the verdicts: what differs by less is at the limit

std::string negative(std::string_view digits) { return std::string{"−"}.append(digits); }

std::string with_minus(std::string digits) {
  if (digits.empty() || digits.front() != '-') return digits;
  if (digits.find_first_not_of("-0.") == std::string::npos) return digits.substr(1);
  return negative(digits.substr(1));
}

double rounded(double value, int digits) {
  const double scale = std::pow(10.0, digits);
  return std::round(value * scale) / scale;
}

std::string elapsed_text(double at_s, int digits) {
  const double scale = std::pow(10.0, digits);
  const auto ticks = static_cast<long long>(std::llround(std::fabs(at_s) * scale));
  const auto per_second = static_cast<long long>(scale);
  const long long whole = ticks / per_second;
  std::string text = fmt::format("{}:{:02}:{:02}", whole / 3600, whole / 60 % 60, whole % 60);
  if (digits > 0) text += fmt::format(".{:0{}}", ticks % per_second, digits);
  return at_s < 0 && ticks != 0 ? negative(text) : text;
}

std::string clock_text(LocalTime time, int digits) {
  // To the nearest printed digit first, so that 59.9996 s never prints as :60.
  const double scale = std::pow(10.0, digits);
  const auto tick = static_cast<std::int64_t>(static_cast<double>(kNanosecondsPerSecond) / scale);
  const LocalTime nearest = LocalTime::of_nanoseconds(time.nanoseconds() + tick / 2);
  std::string text =
      LocalTime::of_nanoseconds(nearest.nanoseconds() - ((nearest.nanoseconds() % tick) + tick) % tick).iso();
  if (digits == 0 && text.size() > 19) text.resize(19);
  std::replace(text.begin(), text.end(), 'T', ' ');
  return text;
}

}  // namespace

std::string decimal_text(double value, int digits) {
  return with_minus(fmt::format("{:.{}f}", value, digits));
}

std::string short_text(double value, int digits) {
  std::string text = fmt::format("{:.{}f}", value, digits);
  if (text.find('.') != std::string::npos) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
  }
  return with_minus(text);
}

std::string count_text(std::uint64_t count) {
  std::string text = fmt::format("{}", count);
  for (std::size_t at = text.size(); at > 3; at -= 3) text.insert(at - 3, 1, ' ');
  return text;
}

std::string thickness_text(double millimetres) { return short_text(millimetres, 2) + " mm"; }

std::string date_text(CivilDate date) {
  return fmt::format("{:04}-{:02}-{:02}", date.year, date.month, date.day);
}

std::string listing(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) text += i + 1 == names.size() ? " and " : ", ";
    text += names[i];
  }
  return text;
}

std::string rounded_duration(double seconds, int digits) {
  const double scale = std::pow(10.0, digits);
  const auto ticks = static_cast<long long>(std::llround(std::fabs(seconds) * scale));
  const auto per_second = static_cast<long long>(scale);
  const long long whole = ticks / per_second;
  const long long fraction = ticks % per_second;
  std::string text;
  const auto add = [&text](const std::string& part) {
    if (!text.empty()) text += ' ';
    text += part;
  };
  if (whole >= 3600) add(fmt::format("{} h", whole / 3600));
  if (whole / 60 % 60 != 0) add(fmt::format("{} min", whole / 60 % 60));
  if (fraction != 0)
    add(fmt::format("{}.{:0{}} s", whole % 60, fraction, digits));
  else if (whole % 60 != 0 || text.empty())
    add(fmt::format("{} s", whole % 60));
  return seconds < 0 && ticks != 0 ? negative(text) : text;
}

PrintedNumbers::PrintedNumbers(TemperatureUnit unit, const Record& record) : unit_(unit), record_(&record) {
  double finest_k = 0.0;
  for (const Channel& channel : record.channels) {
    const double step_k = channel.readings.resolution_k();
    if (channel.evaluated() && step_k > 0.0 && (finest_k == 0.0 || step_k < finest_k)) finest_k = step_k;
  }
  if (finest_k > 0.0) {
    const double step = unit == TemperatureUnit::fahrenheit ? finest_k * kFahrenheitPerKelvin : finest_k;
    log_digits_ = std::clamp(static_cast<int>(std::ceil(-std::log10(step) - 1e-9)), 0, 2);
  }
  if (record.interval_s > 0.0 && record.interval_s < 1.0) time_digits_ = record.interval_s < 0.1 ? 2 : 1;
}

double PrintedNumbers::printed(QuantityUnit quantity, bool is_difference, double value) const {
  if (unit_ != TemperatureUnit::fahrenheit) return value;
  if (quantity == QuantityUnit::celsius_per_hour) return value * kFahrenheitPerKelvin;
  if (quantity == QuantityUnit::celsius)
    return is_difference ? value * kFahrenheitPerKelvin
                         : Temperature::of_celsius(value).in(TemperatureUnit::fahrenheit);
  return value;
}

int PrintedNumbers::usual_digits(QuantityUnit quantity) const {
  switch (quantity) {
    case QuantityUnit::celsius:
      return log_digits_;
    case QuantityUnit::celsius_per_hour:
      return 1;
    case QuantityUnit::seconds:
      return time_digits_;
    case QuantityUnit::one:
      return 0;
  }
  return 0;
}

std::string PrintedNumbers::asked_temperature(double celsius) const {
  return short_text(printed(QuantityUnit::celsius, false, celsius), 2) + " " + degree();
}

std::string PrintedNumbers::asked_difference(double kelvin) const {
  return short_text(printed(QuantityUnit::celsius, true, kelvin), 2) + " " + degree();
}

std::string PrintedNumbers::asked_rate(double celsius_per_hour) const {
  return short_text(printed(QuantityUnit::celsius_per_hour, true, celsius_per_hour), 2) + " " + degree() +
         "/h";
}

std::string PrintedNumbers::range(double low_c, std::optional<double> high_c) const {
  if (!high_c) return fmt::format("at least {}", asked_temperature(low_c));
  return short_text(printed(QuantityUnit::celsius, false, low_c), 2) + " to " + asked_temperature(*high_c);
}

std::string PrintedNumbers::bare_temperature(double celsius, int more) const {
  return decimal_text(printed(QuantityUnit::celsius, false, celsius), log_digits_ + more);
}

std::string PrintedNumbers::temperature(double celsius) const {
  const double value = printed(QuantityUnit::celsius, false, celsius);
  const bool fits = std::fabs(rounded(value, log_digits_) - value) < 1e-6;
  return decimal_text(value, fits ? log_digits_ : log_digits_ + 1) + " " + degree();
}

std::string PrintedNumbers::difference(double kelvin) const {
  const double value = printed(QuantityUnit::celsius, true, kelvin);
  const bool fits = std::fabs(rounded(value, log_digits_) - value) < 1e-6;
  return decimal_text(value, fits ? log_digits_ : log_digits_ + 1) + " " + degree();
}

std::string PrintedNumbers::bare_rate(double celsius_per_hour) const {
  return decimal_text(printed(QuantityUnit::celsius_per_hour, true, celsius_per_hour), 1);
}

std::string PrintedNumbers::rate(double celsius_per_hour) const {
  return bare_rate(celsius_per_hour) + " " + degree() + "/h";
}

std::string PrintedNumbers::moment(double at_s) const {
  const auto local = record_->local_time(at_s);
  return local ? clock_text(*local, time_digits_) : elapsed_text(at_s, time_digits_);
}

std::string PrintedNumbers::span(double from_s, double to_s) const {
  const std::string from = moment(from_s);
  std::string to = moment(to_s);
  if (clock() && from.compare(0, kDateLength, to, 0, kDateLength) == 0) to.erase(0, kDateLength);
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
  if (!local) return elapsed_text(at_s, time_digits_);
  const std::string text = clock_text(*local, time_digits_);
  if (record_->local_time(record_->begin_s())->date() == record_->local_time(record_->end_s())->date())
    return text.substr(kDateLength);
  return fmt::format("{} {} {}", local->date().day, kMonths[local->date().month - 1],
                     text.substr(kDateLength));
}

std::string PrintedNumbers::brief_when(std::optional<double> at_s, std::optional<double> from_s,
                                       std::optional<double> to_s) const {
  if (at_s) return brief_moment(*at_s);
  if (from_s && to_s && *to_s > *from_s) {
    const std::string from = brief_moment(*from_s);
    std::string to = brief_moment(*to_s);
    const std::size_t day = from.rfind(' ');
    if (clock() && day != std::string::npos && from.compare(0, day, to, 0, day) == 0) to.erase(0, day + 1);
    return from + " to " + to;
  }
  if (from_s) return brief_moment(*from_s);
  if (to_s) return brief_moment(*to_s);
  return {};
}

std::string PrintedNumbers::value(QuantityUnit quantity, double value, int digits) const {
  const int wanted = usual_digits(quantity) + digits;
  switch (quantity) {
    case QuantityUnit::celsius:
      return decimal_text(printed(quantity, false, value), wanted) + " " + degree();
    case QuantityUnit::celsius_per_hour:
      return decimal_text(printed(quantity, true, value), wanted) + " " + degree() + "/h";
    case QuantityUnit::seconds:
      return rounded_duration(value, wanted);
    case QuantityUnit::one:
      return short_text(value, std::max(3, wanted));
  }
  return {};
}

MeasuredText PrintedNumbers::measured(const Requirement& requirement) const {
  const QuantityUnit quantity = requirement.unit;
  // A spread is a difference and has no offset; temperature_maxima and ranges are points.
  const bool is_difference = requirement.kind == RequirementKind::spread;
  const double limit = printed(quantity, is_difference, requirement.limit);
  const auto unit_text = [&]() -> std::string {
    if (quantity == QuantityUnit::celsius) return fmt::format(" {}", degree());
    if (quantity == QuantityUnit::celsius_per_hour) return fmt::format(" {}/h", degree());
    return {};
  }();

  int digits = usual_digits(quantity);
  if (quantity == QuantityUnit::one) digits = 3;
  if (requirement.measured) {
    const double value = printed(quantity, is_difference, *requirement.measured);
    if (quantity == QuantityUnit::celsius && std::fabs(rounded(value, digits) - value) > 1e-6) ++digits;
    const bool apart = std::fabs(*requirement.measured - requirement.limit) > 1e-6;
    while (apart && digits < kMostDigits && rounded(value, digits) == rounded(limit, digits)) ++digits;
  }
  if (requirement.margin && std::fabs(*requirement.margin) > 1e-6) {
    const double margin = printed(quantity, true, *requirement.margin);
    while (digits < kMostDigits && rounded(margin, digits) == 0.0) ++digits;
  }

  const auto print = [&](double number, int places) -> std::string {
    if (quantity == QuantityUnit::seconds) return rounded_duration(number, places);
    if (quantity == QuantityUnit::one) return short_text(number, places);
    return decimal_text(number, places) + unit_text;
  };
  MeasuredText text;
  text.limit = requirement.limit_is_least ? "≥ " : "≤ ";
  text.limit += quantity == QuantityUnit::seconds ? rounded_duration(limit, std::max(digits, 0))
                                                  : short_text(limit, std::max(digits, 2)) + unit_text;
  if (requirement.measured)
    text.measured = print(printed(quantity, is_difference, *requirement.measured), digits);
  if (requirement.margin) text.margin = print(printed(quantity, true, *requirement.margin), digits);
  if (requirement.uncertainty)
    text.uncertainty = print(printed(quantity, true, *requirement.uncertainty), digits);
  return text;
}

}  // namespace soakwright
