// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/options/command_options.h"

#include <array>

#include <CLI/CLI.hpp>

namespace soakwright::cli {

const char* const kAbout =
    "Soakwright reads the log of a heat treatment and evaluates it against the procedure.\n"
    "A verdict with every number behind it; the governing code and the qualified procedure decide.";

const char* const kExitCodes =
    "Exit codes: 0 done, all met, every line of verify holds; 1 not met, a line does not hold;\n"
    "2 inconclusive, something could not be shown; 64 wrong usage; 65 bad input;\n"
    "66 cannot be opened; 69 not available in this build; 70 a fault of the program itself;\n"
    "73 cannot be written.";

namespace {

/// An import setting as an option; its key is that of [import] in a job.
struct ImportOption {
  const char* name;
  const char* key;
  const char* value;
  const char* about;
};

constexpr std::array<ImportOption, 11> kImportOptions{{
    {"--encoding", "encoding", "utf-8|utf-16le|utf-16be|windows-1252", "the encoding of the log"},
    {"--delimiter", "delimiter", "SIGN", "what is between cells of the log: , ; | or the words tab, spaces"},
    {"--decimal", "decimal", "SIGN", "the decimal sign of the log: a point or a comma"},
    {"--header-line", "header_line", "N", "the line of the column names; 0: there is none"},
    {"--time-column", "time_column", "NAME", "the column of the time: its name or its number"},
    {"--time", "time", "KIND",
     "what the time is: date and time, time of day, elapsed s, elapsed min, elapsed h, "
     "elapsed h:mm:ss, serial days, unix s, unix ms"},
    {"--date", "date", "DATE", "the date of the first row, where the log has times of day only"},
    {"--start", "start", "MOMENT", "the moment of elapsed time 0, such as 2031-04-02T06:00:00"},
    {"--clock-forward", "clock_forward", "MOMENT", "when the recorder's clock was put forward by an hour"},
    {"--log-unit", "unit", "C|F|K", "the unit of temperature columns that name none"},
    {"--unlisted", "unlisted", "off|evaluated", "columns that the job does not list"},
}};

void add_import_options(CLI::App& command, RawOptions& raw) {
  for (const ImportOption& option : kImportOptions)
    command
        .add_option_function<std::string>(
            option.name,
            [&raw, &option](const std::string& text) { raw.import.emplace_back(option.key, text); },
            option.about)
        ->type_name(option.value)
        ->group("Import settings, each wins over the job's");
}

void add_printing_options(CLI::App& command, RawOptions& raw) {
  command
      .add_option("--dates", raw.dates, "the order of day, month and year in the log, where it is not plain")
      ->type_name("dmy|mdy|ymd");
  command.add_option("--unit", raw.unit, "print temperatures in this unit; results are always in C")
      ->type_name("C|F");
  add_import_options(command, raw);
}

void add_inspect_options(CLI::App& command, Arguments& arguments, RawOptions& raw) {
  command
      .add_option("--job", arguments.request.job, "the job: what was heated, and where each thermocouple sat")
      ->type_name("FILE");
  command.add_option("--json", arguments.json, "write the result as JSON; - is standard output")
      ->type_name("FILE");
  command
      .add_option("--readings", arguments.readings,
                  "write the readings as a table, CSV; - is standard output")
      ->type_name("FILE");
  command.add_option("--chart", arguments.chart, "write a picture of the chart, .png or .svg")
      ->type_name("FILE");
  command.add_flag("--quiet", arguments.quiet, "print nothing but errors");
  add_printing_options(command, raw);
}

void add_check_options(CLI::App& command, Arguments& arguments, RawOptions& raw) {
  command
      .add_option("--procedure", arguments.request.procedure,
                  "the procedure: what is required; else the one that the job names")
      ->type_name("FILE");
  command
      .add_option("--review", arguments.request.review,
                  "a person's dispositions of the findings, made on this result")
      ->type_name("FILE");
  command.add_option("--report", arguments.report, "write the report, .pdf")->type_name("FILE");
  command.add_option("--csv", arguments.csv, "write the requirements as a table, CSV; - is standard output")
      ->type_name("FILE");
  command.add_flag("--explain", arguments.explain,
                   "explain each finding: why the limit, usual causes, what to check");
  command.add_flag("--both-units", arguments.both_units, "the report's certificate in °C and in °F");
  command.add_option("--paper", raw.paper, "the report's sheets; a4 unless given")->type_name("a4|letter");
}

void add_draft_options(CLI::App& command, Arguments& arguments, RawOptions& raw) {
  RawDraft& draft = raw.draft;
  const auto option = [&command](const char* name, std::string& into, const char* about, const char* type) {
    command.add_option(name, into, about)->type_name(type);
  };
  option("RULE", draft.rule, "the published rule to draft from", "");
  command.add_flag("--list", draft.list, "show the rules: source, edition, clause, materials, thickness");
  option("--from", arguments.request.log, "propose limits from what this log shows, to be edited", "LOG");
  option("--job", arguments.request.job, "the job of that log", "FILE");
  option("--dates", raw.dates, "the order of day, month and year in that log, where it is not plain",
         "dmy|mdy|ymd");
  option("--thickness", draft.thickness, "the thickness that governs: \"38 mm\", \"1.5 in\"", "T");
  option("--material", draft.material, "the material group, as --list names it", "GROUP");
  option("--lower-by", draft.lower_by, "a lower holding temperature of the rule, for a longer time", "N");
  option("--hold", draft.hold, "holding temperatures, where the rule has none: 600-640", "LOW-HIGH");
  option("--hold-time", draft.hold_time, "and the time: \"90 min\"", "TIME");
  option("--unit", raw.unit, "write the procedure in this unit; else the rule's or the log's own", "C|F");
  option("--rules", draft.rules, "a folder with further rules", "FOLDER");
  option("--out", draft.out, "the procedure file to write; - or none is standard output", "FILE");
}

void add_batch_options(CLI::App& command, BatchRequest& batch, RawOptions& raw) {
  command.add_option("FOLDER", batch.folders, "folders of logs, with all folders in them")->type_name("");
  command
      .add_option("--procedure", batch.procedure,
                  "the procedure of all logs; else each job names its own. NAME.toml is the job of NAME.csv")
      ->type_name("FILE");
  command.add_option("--json", batch.json, "write the results as JSON lines; - is standard output")
      ->type_name("FILE");
  command.add_option("--csv", batch.csv, "write a table of the results; - is standard output")
      ->type_name("FILE");
  command.add_option("--reports", batch.reports, "write a report of each log, .pdf, into this folder")
      ->type_name("FOLDER");
  command.add_option("--workers", batch.workers, "logs evaluated at once; else as many as there are cores")
      ->type_name("N")
      ->check(CLI::Range(1, 1024));
  command.add_flag("--quiet", batch.quiet, "print nothing but errors");
  command.add_flag("--resume", batch.resume, "go on where a batch with the same outputs was stopped");
  command
      .add_option("--part", raw.part,
                  "evaluate only part I of N, for several machines; needs no coordination")
      ->type_name("I/N");
  add_printing_options(command, raw);
}

}  // namespace

const std::string& version() {
  static const std::string text = std::string("soakwright ") + SOAKWRIGHT_VERSION;
  return text;
}

void describe_commands(CLI::App& app, Arguments& arguments, RawOptions& raw) {
  app.set_version_flag("--version", version(), "print the version and end");
  app.set_help_flag("-h,--help", "print this and end");
  app.get_formatter()->column_width(24);
  app.footer(kExitCodes);
  app.require_subcommand(1);

  CLI::App* inspect =
      app.add_subcommand("inspect", "what was read: columns, units, time, phases, suspects, notices");
  CLI::App* check = app.add_subcommand("check", "the verdict: the log against the procedure");
  inspect->add_option("LOG", arguments.request.log, "the log; else the one that the job names")
      ->type_name("");
  add_inspect_options(*inspect, arguments, raw);
  check
      ->add_option(
          "LOG", arguments.logs,
          "the log; else the one that the job names. Of several logs NAME.toml is the job of NAME.csv")
      ->type_name("");
  add_inspect_options(*check, arguments, raw);
  add_check_options(*check, arguments, raw);
  CLI::App* batch = app.add_subcommand("batch", "the verdicts of all logs in folders, on all cores");
  add_batch_options(*batch, arguments.batch, raw);
  CLI::App* draft = app.add_subcommand("draft", "a procedure from a published rule, or proposed from a log");
  add_draft_options(*draft, arguments, raw);
  CLI::App* sign = app.add_subcommand("sign", "add a person's signature to a report");
  CLI::App* verify =
      app.add_subcommand("verify", "check a report against the files inside it, and its signatures");
  add_sign_options(*sign, arguments.signing);
  add_verify_options(*verify, arguments.signing);
  for (CLI::App* command : {inspect, check, batch, draft, sign, verify}) {
    command->set_version_flag("--version", version(), "print the version and end");
    command->set_help_flag("-h,--help", "print this and end");
  }
}

}  // namespace soakwright::cli
