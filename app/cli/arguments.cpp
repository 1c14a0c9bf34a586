// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/arguments.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <string_view>
#include <utility>

#include <CLI/CLI.hpp>

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

/// A command that a later build has: it is refused, with what to do instead, and not listed.
struct Absent {
  const char* name;
  const char* instead;
};

constexpr std::array<Absent, 1> kAbsent{{
    {"batch", "evaluate the logs one by one with `soakwright check`"},
}};

/// What the options write into before it is evaluated.
struct Raw {
  std::string dates;
  std::string unit;
  RawDraft draft;
  std::string paper;
};

void add_inspect_options(CLI::App& command, Arguments& arguments, Raw& raw) {
  command.add_option("LOG", arguments.request.log, "the log; else the one that the job names")->type_name("");
  command
      .add_option("--job", arguments.request.job, "the job: what was heated, and where each thermocouple sat")
      ->type_name("FILE");
  command.add_option("--json", arguments.json, "write the result as JSON; - is standard output")
      ->type_name("FILE");
  command.add_option("--chart", arguments.chart, "write a picture of the chart, .png or .svg")
      ->type_name("FILE");
  command
      .add_option("--dates", raw.dates, "the order of day, month and year in the log, where it is not plain")
      ->type_name("dmy|mdy|ymd");
  command.add_option("--unit", raw.unit, "print temperatures in this unit; the JSON is always in C")
      ->type_name("C|F");
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
    if (option->count() > 0 && option->get_items_expected() > 0 && option->results().front().empty())
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

std::variant<Arguments, Reply> parse(CLI::App& app, int argc, const char* const* argv) {
  const std::string version = std::string("soakwright ") + SOAKWRIGHT_VERSION;
  app.set_version_flag("--version", version, "print the version and end");
  app.set_help_flag("-h,--help", "print this and end");
  app.get_formatter()->column_width(24);
  app.footer(kExitCodes);
  app.require_subcommand(1);

  Arguments arguments;
  Raw raw;
  CLI::App* inspect =
      app.add_subcommand("inspect", "what was read: columns, units, time, phases, suspects, notices");
  CLI::App* check = app.add_subcommand("check", "the verdict: the log against the procedure");
  add_inspect_options(*inspect, arguments, raw);
  add_inspect_options(*check, arguments, raw);
  add_check_options(*check, arguments, raw);
  CLI::App* draft = app.add_subcommand("draft", "a procedure from a published rule, or proposed from a log");
  add_draft_options(*draft, arguments, raw);
  for (const Absent& absent : kAbsent) app.add_subcommand(absent.name)->group("")->allow_extras();
  CLI::App* sign = app.add_subcommand("sign", "add a person's signature to a report");
  CLI::App* verify =
      app.add_subcommand("verify", "check a report against the files inside it, and its signatures");
  add_sign_options(*sign, arguments.signing);
  add_verify_options(*verify, arguments.signing);
  for (CLI::App* command : {inspect, check, draft, sign, verify}) {
    command->set_version_flag("--version", version, "print the version and end");
    command->set_help_flag("-h,--help", "print this and end");
  }

  // CLI11 would only say that a subcommand is missing.
  const std::string first = argc > 1 ? argv[1] : "";
  if (argc < 2) return usage(app, "no command is given");
  const auto is_first = [&](const CLI::App* command) { return command->get_name() == first; };
  if (!first.starts_with('-') && app.get_subcommands(is_first).empty())
    return usage(app, "there is no command '" + first + "'");

  try {
    app.parse(argc, argv);
  } catch (const CLI::CallForVersion&) {
    return Reply{version + '\n'};
  } catch (const CLI::Success&) {
    return Reply{app.help()};
  } catch (const CLI::ParseError& error) {
    return usage(app, error.what());
  }

  for (const Absent& absent : kAbsent) {
    if (app.got_subcommand(absent.name))
      return refusal(ProblemKind::no_such_part, std::string(absent.name) + ": not available in this build",
                     absent.instead);
  }
  const CLI::App* command = app.get_subcommands().front();
  if (const auto empty = given_empty(*command)) return usage(app, *empty + " has an empty value");
  if (command == sign)
    if (const auto wrong = settle_sign(arguments.signing)) return usage(app, *wrong);
  if (const auto wrong = settle(raw, arguments)) return usage(app, *wrong);
  arguments.command = command == inspect  ? Arguments::Command::inspect
                      : command == sign   ? Arguments::Command::sign
                      : command == verify ? Arguments::Command::verify
                                          : Arguments::Command::check;
  if (command != draft) return arguments;
  arguments.command = Arguments::Command::draft;
  if (auto wrong = settle_draft(raw.draft, arguments.request.log, arguments.request.job, raw.dates,
                                arguments.unit, arguments.draft))
    return Reply{"", std::move(*wrong)};
  return arguments;
}

}  // namespace

std::variant<Arguments, Reply> read_arguments(int argc, const char* const* argv) {
  CLI::App app{kAbout, "soakwright"};
  return parse(app, argc, argv);
}

}  // namespace soakwright::cli
