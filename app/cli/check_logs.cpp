// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/check_logs.h"

#include <optional>
#include <string>
#include <vector>

#include "app/cli/batch/batch_page.h"
#include "app/cli/printing/page_text.h"
#include "app/cli/printing/standard_output.h"
#include "app/cli/printing/text_outputs.h"
#include "app/cli/printing/verdict_page.h"
#include "core/analyse.h"
#include "core/batch.h"
#include "core/batch/batch_lines.h"
#include "core/report/json/result_json.h"
#include "core/report/report.h"
#include "core/report/requirements_csv.h"

namespace soakwright::cli {
namespace {

/// The texts of all logs so far.
struct Gathered {
  std::string json, csv = requirements_csv_header();
  std::vector<int> exit_codes;
};

std::string block_of(const Arguments& arguments, const std::string& log, const Analysis& analysis) {
  ReportOptions options;
  options.unit = arguments.unit;
  options.program_version = SOAKWRIGHT_VERSION;
  const Report report = make_report(analysis, options);
  PageText title(page_style());
  title.line("== " + log, Tint::strong);
  return title.str() + verdict_page(report, page_style(), arguments.explain) + '\n';
}

}  // namespace

int check_several(const Arguments& arguments) {
  Gathered gathered;
  BatchSummary summary(arguments.logs.size());
  BatchProgress progress;
  const bool pages = !arguments.quiet && !text_to_standard_output(arguments);
  for (const std::string& log : arguments.logs) {
    Problems notes;
    const BatchEntry entry = batch_entry_of(log, arguments.request.procedure, notes);
    if (!arguments.quiet)
      for (const Problem& note : notes) static_cast<void>(say(note));
    RecordOutcome outcome{entry, nullptr, nullptr, false, entry.problems};
    std::optional<Analysis> analysis;
    std::string result;
    if (entry.problems.empty()) {
      Request request = arguments.request;
      request.log = log;
      request.job = entry.job;
      auto found = check(request);
      if (found)
        analysis = std::move(found).value();
      else
        outcome.problems = found.problems();
    }
    if (!outcome.problems.empty()) static_cast<void>(say(outcome.problems));
    if (analysis) {
      result = result_json(*analysis);
      outcome.analysis = &*analysis;
      outcome.result = &result;
      gathered.csv += requirements_csv(*analysis, log);
      if (pages)
        if (const auto problem = write_standard_output(block_of(arguments, log, *analysis)))
          return say(*problem);
    }
    gathered.json += json_line(outcome);
    const BatchRow row = row_of(outcome, arguments.unit.value_or(TemperatureUnit::celsius));
    summary.add(row);
    count_row(row, progress);
    gathered.exit_codes.push_back(row.exit_code);
  }
  progress.records = arguments.logs.size();
  if (const auto problem =
          write_text_outputs({{arguments.json, gathered.json}, {arguments.csv, gathered.csv}}))
    return say(*problem);
  if (pages)
    if (const auto problem = write_standard_output(summary.page(progress, page_style())))
      return say(*problem);
  return batch_exit_code(gathered.exit_codes);
}

}  // namespace soakwright::cli
