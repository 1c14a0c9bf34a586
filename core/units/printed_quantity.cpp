// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/printed_quantity.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string_view>
#include <type_traits>

#include <fmt/format.h>

namespace soakwright {
namespace {

constexpr std::string_view kMinus = "\u2212";
constexpr long long kWholeSecondsPerHour = 3600;
constexpr long long kDaysFrom_h = 100;  // 72 h is still the usual way to say it
constexpr double kShort_s = 10.0;       // below that a whole second is too coarse
constexpr int kRateDigits = 1;
constexpr int kRatioDigits = 3;

std::string with_true_minus(std::string digits) {
  if (digits.empty() || digits.front() != '-') return digits;
  digits.erase(0, 1);
  if (digits.find_first_not_of("0.") == std::string::npos) return digits;
  return std::string{kMinus}.append(digits);
}

bool is_temperature(QuantityKind kind) {
  return kind == QuantityKind::temperature || kind == QuantityKind::difference;
}

/// What stands behind the number.
std::string unit_text(QuantityKind kind, TemperatureUnit unit) {
  if (!is_temperature(kind) && kind != QuantityKind::rate) return {};
  return std::string(1, ' ').append(degree_text(unit)).append(kind == QuantityKind::rate ? "/h" : "");
}

}  // namespace

std::string degree_text(TemperatureUnit unit) {
  switch (unit) {
    case TemperatureUnit::celsius:
      return "°C";
    case TemperatureUnit::fahrenheit:
      return "°F";
    case TemperatureUnit::kelvin:
      return "K";
  }
  return {};
}

std::string decimal_text(double value, int digits) {
  return with_true_minus(fmt::format("{:.{}f}", value, digits));
}

std::string short_text(double value, int digits) {
  std::string text = fmt::format("{:.{}f}", value, digits);
  if (text.find('.') != std::string::npos) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
  }
  return with_true_minus(text);
}

std::string count_text(std::int64_t count) {
  std::string text = fmt::format("{}", count);
  const std::size_t first = count < 0 ? 1 : 0;
  for (std::size_t at = text.size(); at > first + 3; at -= 3) text.insert(at - 3, 1, ',');
  return with_true_minus(text);
}

std::string date_text(CivilDate date) {
  return fmt::format("{:04}-{:02}-{:02}", date.year, date.month, date.day);
}

std::string printed_duration(double seconds, int digits) {
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
  long long hours = whole / kWholeSecondsPerHour;
  if (hours >= kDaysFrom_h) {
    add(fmt::format("{} d", hours / 24));
    hours %= 24;
  }
  if (hours != 0) add(fmt::format("{} h", hours));
  if (whole / 60 % 60 != 0) add(fmt::format("{} min", whole / 60 % 60));
  if (fraction != 0)
    add(fmt::format("{}.{:0{}} s", whole % 60, fraction, digits));
  else if (whole % 60 != 0 || text.empty())
    add(fmt::format("{} s", whole % 60));
  return seconds < 0 && ticks != 0 ? std::string{kMinus}.append(text) : text;
}

double in_unit(const Quantity& quantity, TemperatureUnit unit) {
  return std::visit(
      [unit](const auto& value) -> double {
        using Kind = std::decay_t<decltype(value)>;
        if constexpr (std::is_same_v<Kind, Duration>)
          return value.seconds();
        else if constexpr (std::is_same_v<Kind, Ratio>)
          return value.value();
        else if constexpr (std::is_same_v<Kind, Count>)
          return static_cast<double>(value.value());
        else
          return value.in(unit);
      },
      quantity);
}

int usual_digits(const Quantity& quantity, const QuantityFormat& format) {
  switch (kind_of(quantity)) {
    case QuantityKind::temperature:
    case QuantityKind::difference:
      return format.temperature_digits;
    case QuantityKind::rate:
      return kRateDigits;
    case QuantityKind::duration:
      return std::max(format.second_digits,
                      std::fabs(std::get<Duration>(quantity).seconds()) < kShort_s ? 1 : 0);
    case QuantityKind::ratio:
      return kRatioDigits;
    case QuantityKind::count:
      return 0;
  }
  return 0;
}

std::string printed_number(const Quantity& quantity, const QuantityFormat& format, int digits) {
  return decimal_text(in_unit(quantity, format.unit), digits);
}

std::string printed_with(const Quantity& quantity, const QuantityFormat& format, int digits) {
  const double value = in_unit(quantity, format.unit);
  switch (kind_of(quantity)) {
    case QuantityKind::duration:
      return printed_duration(value, digits);
    case QuantityKind::ratio:
      return short_text(value, digits);
    case QuantityKind::count:
      return count_text(std::get<Count>(quantity).value());
    case QuantityKind::temperature:
    case QuantityKind::difference:
    case QuantityKind::rate:
      break;
  }
  return decimal_text(value, digits) + unit_text(kind_of(quantity), format.unit);
}

std::string printed(const Quantity& quantity, const QuantityFormat& format) {
  return printed_with(quantity, format, usual_digits(quantity, format));
}

std::string printed_limit(const Quantity& quantity, const QuantityFormat& format, int digits) {
  switch (kind_of(quantity)) {
    case QuantityKind::temperature:
    case QuantityKind::difference:
    case QuantityKind::rate:
      return short_text(in_unit(quantity, format.unit), digits) + unit_text(kind_of(quantity), format.unit);
    case QuantityKind::duration:
      return printed_with(quantity, format, digits);
    case QuantityKind::ratio:
    case QuantityKind::count:
      break;
  }
  return printed(quantity, format);
}

std::string mm_text(double millimetres) { return short_text(millimetres, 1).append(" mm"); }

}  // namespace soakwright
