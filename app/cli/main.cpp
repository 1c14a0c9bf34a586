// The command line: arguments -> a door of the core -> files and a page of text -> exit code.
#include <cstdio>
#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "app/cli/arguments.h"
#include "app/cli/output_file.h"
#include "app/cli/page_text.h"
#include "app/cli/pdf_loader.h"
#include "app/cli/reading_page.h"
#include "app/cli/verdict_page.h"
#include "core/analyse.h"
#include "core/report/report.h"
#include "core/report/result_json.h"

namespace {

using namespace soakwright;

int say(const Problem& problem) {
  std::fprintf(stderr, "soakwright: %s\n", problem.text().c_str());
  return static_cast<int>(problem.kind);
}

int say(const PdfModule::Failure& failure) {
  std::fprintf(stderr, "soakwright: %s\n", failure.text.c_str());
  return failure.exit_code;
}

int say(const Problems& problems) {
  for (const Problem& problem : problems) say(problem);
  return static_cast<int>(problems.front().kind);
}

/// Everything that was read, also what only the job named.
std::vector<std::string> inputs_of(const Arguments& arguments, const Job* job) {
  const Request& request = arguments.request;
  std::vector<std::string> inputs{request.log, request.procedure, request.job, request.review};
  if (job != nullptr) {
    const auto folder = std::filesystem::path(job->file).parent_path();
    for (const auto& named : {job->log, job->procedure})
      if (named) inputs.push_back((folder / *named).string());
    for (const PreviousRecordEntry& earlier : job->previous_records) {
      inputs.push_back((folder / earlier.log).string());
      if (earlier.job) inputs.push_back((folder / *earlier.job).string());
    }
  }
  return inputs;
}

/// Output that would take the place of what was read is a slip of the hand.
std::optional<Problem> overwritten_input(const Arguments& arguments, const Job* job) {
  for (const std::string& output : {arguments.json, arguments.report, arguments.chart}) {
    if (output.empty() || output == "-") continue;
    for (const std::string& input : inputs_of(arguments, job)) {
      std::error_code error;
      if (!input.empty() && std::filesystem::is_regular_file(input, error) &&
          std::filesystem::equivalent(output, input, error))
        return Problem{ProblemKind::usage, output, 0, "this is a file to be read, and would be written over",
                       "name another file"};
    }
  }
  const std::pair<const char*, const std::string*> outputs[] = {
      {"--json", &arguments.json}, {"--report", &arguments.report}, {"--chart", &arguments.chart}};
  for (const auto& [one, path] : outputs)
    for (const auto& [other, same] : outputs)
      if (path < same && !path->empty() && *path == *same)
        return Problem{ProblemKind::usage, *path, 0, std::string("named for both ") + one + " and " + other,
                       "give each a file of its own"};
  return std::nullopt;
}

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

/// The page for people, or the result where standard output was asked to hold that.
std::optional<Problem> print(const Analysis& analysis, const Arguments& arguments,
                             const std::string& result) {
  if (arguments.json == "-") return write_standard_output(result);
  const Report report = make_report(analysis, {arguments.unit, SOAKWRIGHT_VERSION, ""});
  const bool coloured = colour_is_welcome();
  return write_standard_output(arguments.command == Arguments::Command::inspect
                                   ? reading_page(report, coloured)
                                   : verdict_page(report, coloured));
}

int run(const Arguments& arguments) {
  // Whether there is a report writer is known before the work.
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
  if (const auto problem = overwritten_input(arguments, analysis.job.get())) return say(*problem);

  std::string result;
  if (!arguments.json.empty()) result = result_json(analysis);
  if (!arguments.report.empty())
    if (const auto failure = pdf->write_report(analysis, arguments.unit, arguments.report))
      return say(*failure);
  if (!arguments.chart.empty())
    if (const auto failure = pdf->write_chart(analysis, arguments.unit, arguments.chart))
      return say(*failure);
  if (!arguments.json.empty() && arguments.json != "-") {
    if (const auto problem = write_file_whole(arguments.json, result)) return say(*problem);
  }
  if (const auto problem = print(analysis, arguments, result)) return say(*problem);
  return exit_code_of(analysis);
}

}  // namespace

int main(int argc, char** argv) {
  const auto read = read_arguments(argc, argv);
  if (const auto* reply = std::get_if<Reply>(&read)) {
    std::fputs(reply->standard_error.c_str(), stderr);
    if (const auto problem = write_standard_output(reply->standard_output)) return say(*problem);
    return reply->exit_code;
  }
  return run(std::get<Arguments>(read));
}
