// Numbers and moments as the sentences of requirements and findings say them.
#pragma once

#include <string>

#include "core/record/record.h"

namespace soakwright {

std::string say_celsius(double celsius);                    ///< 611.6 °C
std::string say_kelvin(double kelvin);                      ///< 15.8 °C, a difference
std::string say_rate(double celsius_per_hour);              ///< 143.4 °C/h
std::string say_time(double seconds);                       ///< 1 h 59 min 4 s
std::string say_moment(const Record& record, double at_s);  ///< as the recorder showed it
std::string say_span(const Record& record, double from_s, double to_s);

}  // namespace soakwright
