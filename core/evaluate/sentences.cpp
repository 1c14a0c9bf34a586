#include "core/evaluate/sentences.h"

#include <cmath>

#include <fmt/format.h>

#include "core/units/printed_quantity.h"

namespace soakwright {

std::string say_celsius(double celsius) { return printed(Temperature::of_celsius(celsius), {}); }

std::string say_kelvin(double kelvin) { return printed(TemperatureDifference::of_kelvin(kelvin), {}); }

std::string say_rate(double celsius_per_hour) {
  return printed(HeatingRate::of_celsius_per_hour(celsius_per_hour), {});
}

std::string say_time(double seconds) { return printed(Duration::of_seconds(seconds), {}); }

std::string say_moment(const Record& record, double at_s) { return record.moment_text(at_s); }

std::string say_span(const Record& record, double from_s, double to_s) {
  return say_moment(record, from_s) + " to " + say_moment(record, to_s);
}

}  // namespace soakwright
