// SPDX-License-Identifier: GPL-3.0-or-later
// The command line as a value.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "app/cli/draft/draft_arguments.h"
#include "app/cli/modules/signing_arguments.h"
#include "core/analyse.h"
#include "core/batch.h"
#include "core/report/report.h"
#include "core/units/temperature.h"

namespace soakwright::cli {

struct Arguments {
  enum class Command { inspect, check, batch, draft, sign, verify };
  Command command = Command::check;
  Request request;
  std::string json;                    ///< a path, "-" for standard output; empty where no result is wanted
  std::string report;                  ///< a path, .pdf; empty where no report is wanted
  std::string csv;                     ///< the table of requirements; as json
  std::string readings;                ///< the table of readings; as json
  std::vector<std::string> logs = {};  ///< of `check`, where there are several; request.log is empty then
  bool explain = false;
  bool quiet = false;
  std::string chart;  ///< a path; .png or .svg; empty where no picture of the chart is wanted
  std::optional<TemperatureUnit> unit;
  BatchRequest batch;       ///< of `batch` alone, complete
  DraftArguments draft;     ///< of the command `draft`
  Paper paper = Paper::a4;  ///< of the report
  bool both_units = false;  ///< of the report
  SigningArguments signing;
};

/// An answer that needs no analysis: help, the version, or what is wrong with the command line.
struct Reply {
  std::string standard_output;
  std::optional<Problem> problem = std::nullopt;
};

std::variant<Arguments, Reply> read_arguments(int argc, const char* const* argv);

}  // namespace soakwright::cli
