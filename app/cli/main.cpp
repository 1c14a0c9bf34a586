// SPDX-License-Identifier: GPL-3.0-or-later
// The command line: arguments -> an entry point of the core -> files and a page of text -> exit code.
//
// 1. read_arguments()      options as a value, or an answer that needs no work
// 2. clash_of_outputs()    nothing that is read is written over
// 3. PdfModule::open()     whether there is a report writer is known before the work
// 4. inspect() or check()  the analysis, once
// 5. make_report(), report_contents() and result_json(), each once, handed to all that print them
// `sign` and `verify` take another way: signing_command.h.
#include <optional>
#include <string>
#include <variant>

#include "app/cli/arguments.h"
#include "app/cli/batch/batch_command.h"
#include "app/cli/check_logs.h"
#include "app/cli/draft/draft_command.h"
#include "app/cli/endings.h"
#include "app/cli/modules/pdf_loader.h"
#include "app/cli/modules/signing_command.h"
#include "app/cli/printing/output_paths.h"
#include "app/cli/printing/page_text.h"
#include "app/cli/printing/reading_page.h"
#include "app/cli/printing/standard_output.h"
#include "app/cli/printing/text_outputs.h"
#include "app/cli/printing/verdict_page.h"
#include "core/analyse.h"
#include "core/problems/caught.h"
#include "core/report/json/result_json.h"
#include "core/report/readings_csv.h"
#include "core/report/report.h"
#include "core/report/report_contents.h"
#include "core/report/requirements_csv.h"

namespace soakwright::cli {
namespace {

int exit_code_of(const Analysis& analysis) {
  if (!analysis.verdicts) return 0;
  switch (analysis.verdicts->verdict) {
    case Verdict::met:
      return 0;
    case Verdict::not_met:
      return 1;
    case Verdict::inconclusive:
      return 2;
  }
  return 0;
}

std::string page_of(const Report& report, const Arguments& arguments) {
  return arguments.command == Arguments::Command::inspect
             ? reading_page(report, page_style())
             : verdict_page(report, page_style(), arguments.explain);
}

int run(const Arguments& arguments) {
  if (const auto problem = clash_of_outputs(arguments)) return say(*problem);
  if (arguments.command == Arguments::Command::draft) return run_draft(arguments);
  if (!arguments.logs.empty()) return check_several(arguments);
  std::optional<PdfModule> pdf;
  if (!arguments.report.empty() || !arguments.chart.empty()) {
    auto opened = PdfModule::open();
    if (const auto* missing = std::get_if<Problem>(&opened)) return say(*missing);
    pdf = std::get<PdfModule>(opened);
  }

  const auto found = arguments.command == Arguments::Command::inspect ? inspect(arguments.request)
                                                                      : check(arguments.request);
  if (!found) return say(found.problems());
  const Analysis& analysis = found.value();
  const bool page = !arguments.quiet && !text_to_standard_output(arguments);
  ReportOptions options;
  options.unit = arguments.unit;
  options.program_version = SOAKWRIGHT_VERSION;
  options.paper = arguments.paper;
  options.both_units = arguments.both_units;
  std::optional<Report> report;
  if (!arguments.chart.empty() || page) report = make_report(analysis, options);
  std::string result;
  if (!arguments.json.empty()) result = result_json(analysis);

  if (!arguments.report.empty()) {
    const auto contents = report_contents(analysis, options);
    if (!contents) return say(contents.problems());
    if (const auto failure = pdf->write_report(contents.value(), arguments.report)) return say(*failure);
  }
  if (!arguments.chart.empty())
    if (const auto failure = pdf->write_chart(*report, arguments.chart)) return say(*failure);
  std::string requirements, readings;
  if (!arguments.csv.empty())
    requirements = requirements_csv_header() + requirements_csv(analysis, analysis.record->file);
  if (!arguments.readings.empty()) readings = readings_csv(*analysis.record);
  if (const auto problem = write_text_outputs(
          {{arguments.json, result}, {arguments.csv, requirements}, {arguments.readings, readings}}))
    return say(*problem);
  if (page)
    if (const auto problem = write_standard_output(page_of(*report, arguments))) return say(*problem);
  return exit_code_of(analysis);
}

int answer(const Reply& reply) {
  if (reply.problem) return say(*reply.problem);
  if (const auto problem = write_standard_output(reply.standard_output)) return say(*problem);
  return 0;
}

}  // namespace
}  // namespace soakwright::cli

int main(int argc, char** argv) {
  using namespace soakwright::cli;
  prepare_endings();
  try {
    const auto read = read_arguments(argc, argv);
    if (const auto* reply = std::get_if<Reply>(&read)) return answer(*reply);
    const auto& arguments = std::get<Arguments>(read);
    if (arguments.command == Arguments::Command::batch) return run_batch_command(arguments.batch);
    if (arguments.command == Arguments::Command::sign) return run_sign(arguments.signing.sign);
    if (arguments.command == Arguments::Command::verify) return run_verify(arguments.signing.verify);
    return run(arguments);
  } catch (...) {
    return say(soakwright::caught_problem({}));
  }
}
