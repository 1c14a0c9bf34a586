#include "core/evaluate/sentences.h"

#include <cmath>

#include <fmt/format.h>

namespace soakwright {

std::string say_celsius(double celsius) { return fmt::format("{:.1f} °C", celsius); }

std::string say_kelvin(double kelvin) { return fmt::format("{:.1f} °C", kelvin); }

std::string say_rate(double celsius_per_hour) { return fmt::format("{:.1f} °C/h", celsius_per_hour); }

std::string say_time(double seconds) {
  if (seconds < 60.0) return fmt::format("{:.1f} s", seconds);
  const auto whole = static_cast<long long>(std::floor(seconds + 0.5));
  std::string text;
  if (whole >= 3600) text += fmt::format("{} h ", whole / 3600);
  text += fmt::format("{} min", whole / 60 % 60);
  if (whole % 60 != 0) text += fmt::format(" {} s", whole % 60);
  return text;
}

std::string say_moment(const Record& record, double at_s) {
  if (const auto local = record.local_time(std::floor(at_s + 0.5))) {
    std::string text = local->iso();
    text[10] = ' ';
    return text.substr(0, 19);
  }
  return fmt::format("{:.0f} s", at_s);
}

std::string say_span(const Record& record, double from_s, double to_s) {
  return say_moment(record, from_s) + " to " + say_moment(record, to_s);
}

}  // namespace soakwright
