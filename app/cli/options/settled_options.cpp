// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/options/settled_options.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <string_view>
#include <utility>

namespace soakwright::cli {
namespace {

bool ends_in(std::string_view path, std::string_view ending) {
  const auto same = [](char a, char b) { return std::tolower(static_cast<unsigned char>(a)) == b; };
  return path.size() > ending.size() &&
         std::equal(ending.begin(), ending.end(), path.end() - static_cast<std::ptrdiff_t>(ending.size()),
                    [&](char wanted, char found) { return same(found, wanted); });
}

/// Devices and pipes have no ending to go by; what a file's name promises is what is written.
std::optional<std::string> wrong_ending(const Arguments& arguments) {
  const std::string& report = arguments.report;
  const std::string& chart = arguments.chart;
  if (!report.empty() && !ends_in(report, ".pdf"))
    return "--report names a file that ends in .pdf, not '" + report + "'";
  if (!chart.empty() && !ends_in(chart, ".png") && !ends_in(chart, ".svg"))
    return "--chart names a file that ends in .png or .svg, not '" + chart + "'";
  return std::nullopt;
}

/// "3/16"; returns nullopt where it is no such part.
std::optional<BatchPart> part_of(std::string_view text) {
  BatchPart part;
  const char* const end = text.data() + text.size();
  const auto number = std::from_chars(text.data(), end, part.number);
  if (number.ec != std::errc{} || number.ptr == end || *number.ptr != '/') return std::nullopt;
  const auto of = std::from_chars(number.ptr + 1, end, part.of);
  if (of.ec != std::errc{} || of.ptr != end || part.number < 1 || part.number > part.of) return std::nullopt;
  return part;
}

}  // namespace

std::optional<std::string> settle_logs(const RawOptions& raw, Arguments& arguments) {
  if (!raw.import.empty() && (!arguments.report.empty() || !arguments.batch.reports.empty()))
    return "a report is made from its source files alone, so that it can be verified; write the import "
           "settings "
           "into [import] of the job";
  if (arguments.logs.size() == 1) {
    arguments.request.log = arguments.logs.front();
    arguments.logs.clear();
  }
  const bool several = !arguments.logs.empty();
  const std::array<std::pair<const char*, const std::string*>, 5> of_one{
      {{"--job", &arguments.request.job},
       {"--review", &arguments.request.review},
       {"--report", &arguments.report},
       {"--chart", &arguments.chart},
       {"--readings", &arguments.readings}}};
  for (const auto& [option, value] : of_one)
    if (several && !value->empty())
      return std::string(option) +
             " is for one log; of several each has the job beside it, and `soakwright batch` "
             "makes their reports";
  const auto to_output = [](const std::string& path) { return path == "-" ? 1 : 0; };
  if (to_output(arguments.json) + to_output(arguments.csv) + to_output(arguments.readings) > 1)
    return "only one result can go to standard output";
  return std::nullopt;
}

std::optional<std::string> settle_batch(const RawOptions& raw, Arguments& arguments) {
  BatchRequest& batch = arguments.batch;
  if (batch.folders.empty()) return "no folder is named";
  if (!raw.part.empty()) {
    const auto part = part_of(raw.part);
    if (!part)
      return "--part is the number of the part and of all parts, such as 3/16, not '" + raw.part + "'";
    batch.part = *part;
  }
  batch.import = raw.import;
  batch.dates = arguments.request.dates;
  batch.unit = arguments.unit;
  batch.json_to_caller = batch.json == "-";
  batch.csv_to_caller = batch.csv == "-";
  if (batch.json_to_caller && batch.csv_to_caller) return "--json and --csv cannot both be standard output";
  if (batch.json_to_caller) batch.json.clear();
  if (batch.csv_to_caller) batch.csv.clear();
  return std::nullopt;
}

std::optional<std::string> settle_choices(const RawOptions& raw, Arguments& arguments) {
  if (raw.dates == "dmy")
    arguments.request.dates = DateOrder::dmy;
  else if (raw.dates == "mdy")
    arguments.request.dates = DateOrder::mdy;
  else if (raw.dates == "ymd")
    arguments.request.dates = DateOrder::ymd;
  else if (!raw.dates.empty())
    return "--dates is dmy, mdy or ymd, not '" + raw.dates + "'";
  if (raw.unit == "C")
    arguments.unit = TemperatureUnit::celsius;
  else if (raw.unit == "F")
    arguments.unit = TemperatureUnit::fahrenheit;
  else if (!raw.unit.empty())
    return "--unit is C or F, not '" + raw.unit + "'";
  if (raw.paper == "letter")
    arguments.paper = Paper::letter;
  else if (!raw.paper.empty() && raw.paper != "a4")
    return "--paper is a4 or letter, not '" + raw.paper + "'";
  if (!raw.paper.empty() && arguments.report.empty())
    return std::string("--paper is of the report, and no --report is named");
  if (arguments.both_units && arguments.report.empty())
    return std::string("--both-units is of the report, and no --report is named");
  return wrong_ending(arguments);
}

}  // namespace soakwright::cli
