// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/arguments.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <string_view>
#include <utility>

#include <CLI/CLI.hpp>

#include "app/cli/option_table.h"

namespace soakwright::cli {
namespace {

constexpr const char* kAbout =
    "Soakwright reads the log of a heat treatment and evaluates it against the procedure.\n"
    "A verdict with every number behind it; the governing code and the qualified procedure decide.";

constexpr const char* kExitCodes =
    "Exit codes: 0 done, all met, every line of verify holds; 1 not met, a line does not hold;\n"
    "2 inconclusive, something could not be shown; 64 wrong usage; 65 bad input;\n"
    "66 cannot be opened; 69 not available in this build; 70 a fault of the program itself;\n"
    "73 cannot be written.";

/// What the options write into before it is evaluated.
struct Raw {
  std::string dates;
  std::string unit;
  RawDraft draft;
  std::string part;
  ImportTexts import;
  std::string paper;
};

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

void add_import_options(CLI::App& command, Raw& raw) {
  for (const ImportOption& option : kImportOptions)
    command
        .add_option_function<std::string>(
            option.name,
            [&raw, &option](const std::string& text) { raw.import.emplace_back(option.key, text); },
            option.about)
        ->type_name(option.value)
        ->group("Import settings, each wins over the job's");
}

void add_printing_options(CLI::App& command, Raw& raw) {
  command
      .add_option("--dates", raw.dates, "the order of day, month and year in the log, where it is not plain")
      ->type_name("dmy|mdy|ymd");
  command.add_option("--unit", raw.unit, "print temperatures in this unit; results are always in C")
      ->type_name("C|F");
  add_import_options(command, raw);
}

void add_inspect_options(CLI::App& command, Arguments& arguments, Raw& raw) {
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

void add_check_options(CLI::App& command, Arguments& arguments, Raw& raw) {
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
  command.add_option("--paper", raw.paper, "the report's sheets; a4 unless given")->type_name("a4|letter");
}

void add_draft_options(CLI::App& command, Arguments& arguments, Raw& raw) {
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

void add_batch_options(CLI::App& command, BatchRequest& batch, Raw& raw) {
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

Reply refusal(ProblemKind kind, const std::string& what, const std::string& help) {
  return {"", Problem{kind, "", 0, what, help}};
}

Reply usage(const CLI::App& app, const std::string& what) {
  const auto commands = app.get_subcommands();  // those that were parsed
  const std::string of = commands.empty() ? "" : commands.front()->get_name() + " ";
  return refusal(ProblemKind::usage, what, "see `soakwright " + of + "--help`");
}

/// The name of an option that was given with nothing in it.
std::optional<std::string> given_empty(const CLI::App& command) {
  for (const CLI::Option* option : command.get_options()) {
    if (option->count() == 0 || option->get_items_expected() == 0) continue;
    const auto& values = option->results();
    if (std::any_of(values.begin(), values.end(), [](const std::string& value) { return value.empty(); }))
      return option->get_name();
  }
  return std::nullopt;
}

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

/// Settles what `check` and `inspect` have in common; says what is wrong with it.
std::optional<std::string> settle_logs(const Raw& raw, Arguments& arguments) {
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

/// Settles what only `batch` has; says what is wrong with it.
std::optional<std::string> settle_batch(const Raw& raw, Arguments& arguments) {
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

/// Settles what is a choice of words; says what is wrong with it.
std::optional<std::string> settle(const Raw& raw, Arguments& arguments) {
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
  return wrong_ending(arguments);
}

const std::string& version() {
  static const std::string text = std::string("soakwright ") + SOAKWRIGHT_VERSION;
  return text;
}

/// All commands and options; what they write into must outlive the parsing.
void describe(CLI::App& app, Arguments& arguments, Raw& raw) {
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

std::variant<Arguments, Reply> parse(CLI::App& app, int argc, const char* const* argv) {
  Arguments arguments;
  Raw raw;
  describe(app, arguments, raw);
  // CLI11 would only say that a subcommand is missing.
  const std::string first = argc > 1 ? argv[1] : "";
  if (argc < 2) return usage(app, "no command is given");
  const auto is_first = [&](const CLI::App* command) { return command->get_name() == first; };
  if (!first.starts_with('-') && app.get_subcommands(is_first).empty())
    return usage(app, "there is no command '" + first + "'");

  try {
    app.parse(argc, argv);
  } catch (const CLI::CallForVersion&) {
    return Reply{version() + '\n'};
  } catch (const CLI::Success&) {
    return Reply{app.help()};
  } catch (const CLI::ParseError& error) {
    return usage(app, error.what());
  }

  const CLI::App* command = app.get_subcommands().front();
  if (const auto empty = given_empty(*command)) return usage(app, *empty + " has an empty value");
  if (command->get_name() == "sign")
    if (const auto wrong = settle_sign(arguments.signing)) return usage(app, *wrong);
  if (const auto wrong = settle(raw, arguments)) return usage(app, *wrong);
  if (const auto wrong = settle_logs(raw, arguments)) return usage(app, *wrong);
  const auto import = import_choices_of(raw.import);
  if (!import) return Reply{"", import.problems().front()};
  arguments.request.import = import.value();
  const std::string& name = command->get_name();
  arguments.command = name == "inspect"  ? Arguments::Command::inspect
                      : name == "check"  ? Arguments::Command::check
                      : name == "batch"  ? Arguments::Command::batch
                      : name == "sign"   ? Arguments::Command::sign
                      : name == "verify" ? Arguments::Command::verify
                                         : Arguments::Command::draft;
  if (name == "batch")
    if (const auto wrong = settle_batch(raw, arguments)) return usage(app, *wrong);
  if (name != "draft") return arguments;
  if (auto wrong = settle_draft(raw.draft, arguments.request.log, arguments.request.job, raw.dates,
                                arguments.unit, arguments.draft))
    return Reply{"", std::move(*wrong)};
  return arguments;
}

/// Lines of one text on one line.
std::string flat(std::string text) {
  std::replace(text.begin(), text.end(), '\n', ' ');
  return text;
}

CommandWords words_of(const CLI::App& app, const std::string& name) {
  CommandWords words{name, flat(app.get_description()), {}, {}};
  for (const CLI::Option* option : app.get_options()) {
    if (option->get_positional()) {
      words.arguments.push_back({option->get_name(), flat(option->get_description())});
      continue;
    }
    OptionWords one;
    for (const std::string& letter : option->get_snames()) one.names.push_back("-" + letter);
    for (const std::string& word : option->get_lnames()) one.names.push_back("--" + word);
    one.value = option->get_items_expected() > 0 ? option->get_type_name() : std::string{};
    one.about = flat(option->get_description());
    words.options.push_back(std::move(one));
  }
  return words;
}

}  // namespace

std::vector<CommandWords> option_table() {
  CLI::App app{kAbout, "soakwright"};
  Arguments arguments;
  Raw raw;
  describe(app, arguments, raw);
  std::vector<CommandWords> table{words_of(app, {})};
  for (const CLI::App* command :
       app.get_subcommands([](const CLI::App* one) { return !one->get_group().empty(); }))
    table.push_back(words_of(*command, command->get_name()));
  return table;
}

std::string exit_codes_text() {
  const std::string text = kExitCodes;
  return text.substr(text.find(": ") + 2);
}

std::variant<Arguments, Reply> read_arguments(int argc, const char* const* argv) {
  CLI::App app{kAbout, "soakwright"};
  return parse(app, argc, argv);
}

}  // namespace soakwright::cli
