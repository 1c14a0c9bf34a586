// The figures of a suspect's sentence, rounded for reading.
#pragma once

#include <string>

namespace soakwright {

/// `23 min`, `1 h 5 min`, `40 s`: to whole minutes from ten minutes on, else to whole seconds.
std::string length_text(double from_s, double to_s);
/// `412.3 °C`.
std::string celsius_text(double celsius);
/// `12.4 °C`, a difference, without its sign.
std::string kelvin_text(double kelvin);

}  // namespace soakwright
