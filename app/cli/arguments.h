// The command line as a value: what was asked, in the words of the contract's section 7.
#pragma once

#include <optional>
#include <string>
#include <variant>

#include "core/analyse.h"
#include "core/units/temperature.h"

namespace soakwright {

struct Arguments {
  enum class Command { inspect, check };
  Command command = Command::check;
  Request request;
  std::string json;    ///< a path, "-" for standard output; empty where no result is wanted
  std::string report;  ///< a path; empty where no report is wanted
  std::string chart;   ///< a path; empty where no picture of the chart is wanted
  std::optional<TemperatureUnit> unit;
};

/// An answer that needs no analysis: help, the version, or what is wrong with the command line.
struct Reply {
  int exit_code = 0;
  std::string standard_output;
  std::string standard_error;
};

std::variant<Arguments, Reply> read_arguments(int argc, const char* const* argv);

}  // namespace soakwright
